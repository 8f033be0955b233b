package main

import (
	"reflect"
	"strings"
	"testing"

	"plainlift/calc"
	"plainlift/calc/unit"
)

func question(changes ...any) map[string]any {
	m := map[string]any{
		"seq": 7.0, "op": "evaluate", "worksheet": "short", "system": "metric",
		"fields": []any{[]any{"reading", "18", "MPa", "", true}, []any{"kit", "1 : 2", "mm", "", false}},
		"link":   []any{},
	}
	for i := 0; i < len(changes); i += 2 {
		m[changes[i].(string)] = changes[i+1]
	}
	return m
}

func TestReadRequest(t *testing.T) {
	got, err := readRequest(question())
	want := request{seq: 7, op: "evaluate", worksheet: "short", system: unit.Metric, entries: calc.Entries{
		"reading": {Text: "18", Unit: "MPa", Own: true},
		"kit":     {Text: "1 : 2", Unit: "mm"},
	}}
	if err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v, %v; want %+v", got, err, want)
	}
	got, err = readRequest(question("op", "convert", "system", "us", "to", "metric"))
	if err != nil || got.op != "convert" || got.system != unit.US || got.to != unit.Metric {
		t.Errorf("convert: %+v, %v", got, err)
	}
}

// What a link means is the core's to say, and what was typed since wins over it.
func TestReadRequestWithLink(t *testing.T) {
	link := []any{[]any{"v", "1"}, []any{"reading", "2600 psi"}, []any{"lift", "700 kg"}, []any{"at", "180 bar"},
		[]any{"lift", "1 kg"}, []any{"colour", ""}, []any{"example", "at,reading"}, []any{"end", "1)."}}
	got, err := readRequest(question("link", link))
	want := calc.Entries{
		"reading": {Text: "18", Unit: "MPa", Own: true},
		"kit":     {Text: "1 : 2", Unit: "mm"},
		"lift":    {Text: "700 kg", Own: true},
		"at":      {Text: "180 bar"},
		"colour":  {Own: true},
	}
	if err != nil || !reflect.DeepEqual(got.entries, want) {
		t.Errorf("got %+v, %v; want %+v", got.entries, err, want)
	}
}

func TestReadRequestRefuses(t *testing.T) {
	for _, m := range []map[string]any{
		{},
		question("seq", "7"),
		question("op", nil),
		question("op", "remove"),
		question("op", "convert"),
		question("op", "convert", "to", "imperial"),
		question("worksheet", 1.0),
		question("system", "si"),
		question("fields", nil),
		question("link", nil),
		question("link", []any{"reading"}),
		question("link", []any{[]any{"reading"}}),
		question("link", []any{[]any{"reading", 1.0}}),
		question("fields", []any{"reading"}),
		question("fields", []any{[]any{"reading", "18", "MPa", ""}}),
		question("fields", []any{[]any{"reading", 18.0, "MPa", "", true}}),
		question("fields", []any{[]any{"reading", "18", "MPa", "", 1.0}}),
	} {
		if r, err := readRequest(m); err == nil {
			t.Errorf("%v was read as %+v", m, r)
		}
	}
}

// full is an answer with something in every field.
func full() *calc.Answer {
	a := new(calc.Answer)
	fillIn(reflect.ValueOf(a).Elem())
	return a
}

func fillIn(v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		v.SetString("text")
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Int:
		v.SetInt(1)
	case reflect.Float64:
		v.SetFloat(0.5)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		for i := range v.Len() {
			fillIn(v.Index(i))
		}
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		fillIn(v.Elem())
	case reflect.Struct:
		for _, f := range v.Fields() {
			fillIn(f)
		}
	}
}

// Whatever an answer has must reach the page, under the same name. A field that
// is added to the answer and forgotten in the message fails here.
func TestAnswerCarriesEverything(t *testing.T) {
	compare(t, "answer", reflect.ValueOf(*full()), decoded(t, answer(full())))
}

func compare(t *testing.T, path string, want reflect.Value, got any) {
	t.Helper()
	switch want.Kind() {
	case reflect.Pointer:
		if !want.IsNil() {
			compare(t, path, want.Elem(), got)
		} else if got != nil {
			t.Errorf("%s: %v, want nothing", path, got)
		}
	case reflect.Slice:
		list, ok := got.([]any)
		if !ok || len(list) != want.Len() {
			t.Errorf("%s: %v is no list of %d", path, got, want.Len())
			return
		}
		for i := range list {
			compare(t, path+"[]", want.Index(i), list[i])
		}
	case reflect.Struct:
		if p, ok := want.Interface().(calc.Pair); ok {
			if !reflect.DeepEqual(got, []any{p.Key, strings.ToValidUTF8(p.Value, "\ufffd")}) {
				t.Errorf("%s: pair %v", path, got)
			}
			return
		}
		m, ok := got.(map[string]any)
		if !ok || len(m) != want.NumField() {
			t.Errorf("%s: %v does not have just the %d fields of %s", path, got, want.NumField(), want.Type())
			return
		}
		for f, v := range want.Fields() {
			name := strings.ToLower(f.Name[:1]) + f.Name[1:]
			if f.Name == "ID" {
				name = "id"
			}
			compare(t, path+"."+name, v, m[name])
		}
	default:
		if p, ok := want.Interface().(calc.Place); ok {
			if got != places[p] || got == "" {
				t.Errorf("%s: place %v", path, got)
			}
			return
		}
		plain := want.Interface()
		switch v := plain.(type) {
		case int:
			plain = float64(v)
		case string:
			plain = strings.ToValidUTF8(v, "\ufffd")
		}
		if !reflect.DeepEqual(got, plain) {
			t.Errorf("%s: %v (%T), want %v", path, got, got, want)
		}
	}
}

// The page loops over lists without asking whether they are there.
func TestEmptyAnswerHasLists(t *testing.T) {
	m := decoded(t, answer(&calc.Answer{Fields: make([]calc.FieldState, 1)})).(map[string]any)
	rows := m["fields"].([]any)[0].(map[string]any)["rows"]
	if list, ok := rows.([]any); !ok || list == nil {
		t.Error("rows is no list")
	}
	for f, v := range reflect.ValueOf(calc.Answer{}).Fields() {
		name := strings.ToLower(f.Name[:1]) + f.Name[1:]
		if list, ok := m[name].([]any); v.Kind() == reflect.Slice && name != "fields" && (!ok || list == nil || len(list) > 0) {
			t.Errorf("%s is %#v, not an empty list", name, m[name])
		}
	}
}
