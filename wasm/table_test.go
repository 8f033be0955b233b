package main

import (
	"reflect"
	"testing"
)

// A table is read beside the questions, and leaves a simulation alone.
func TestTableMessage(t *testing.T) {
	var got map[string]any
	d := &desk{post: func(m map[string]any) { got = m }, job: new(job)}
	d.take(map[string]any{"op": "table", "text": "a;b\r\n1,5;\"x\ny\"\n2"})
	want := map[string]any{"type": "table", "error": "", "separator": ";",
		"rows":  []any{[]any{"a", "b"}, []any{"1,5", "x\ny"}, []any{"2"}},
		"lines": []any{1, 2, 4}, "wrong": []any{"", "", "This line has 1 cell where the first names 2"}}
	if !reflect.DeepEqual(got, want) || d.job == nil {
		t.Errorf("got %v, job %v", got, d.job)
	}
	d.take(map[string]any{"op": "table", "text": ""})
	if says, _ := got["error"].(string); says == "" || len(got["rows"].([]any)) != 0 {
		t.Errorf("nothing: %v", got)
	}
}
