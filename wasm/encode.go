package main

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// encode writes a message as JSON. One text crosses to JavaScript at once, where
// an object would cross value by value; and encoding/json is larger than all the
// worksheets. It takes what messages are made of: maps, lists, strings, numbers,
// booleans, nil, and what a writer has written.
func encode(b *strings.Builder, v any) {
	switch v := v.(type) {
	case map[string]any:
		separator := "{"
		for key, item := range v {
			b.WriteString(separator)
			quote(b, key)
			b.WriteByte(':')
			encode(b, item)
			separator = ","
		}
		if len(v) == 0 {
			b.WriteByte('{')
		}
		b.WriteByte('}')
	case []any:
		separator := "["
		for _, item := range v {
			b.WriteString(separator)
			encode(b, item)
			separator = ","
		}
		if len(v) == 0 {
			b.WriteByte('[')
		}
		b.WriteByte(']')
	case string:
		quote(b, v)
	case written:
		b.WriteString(string(v))
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) { // JSON has neither
			b.WriteString("null")
			return
		}
		b.WriteString(strconv.FormatFloat(v, 'g', -1, 64))
	case int:
		b.WriteString(strconv.Itoa(v))
	case bool:
		b.WriteString(strconv.FormatBool(v))
	default:
		b.WriteString("null")
	}
}

// quote writes a JSON string. What is not UTF-8 becomes the replacement character.
func quote(b *strings.Builder, s string) {
	b.WriteByte('"')
	from := 0
	for i := 0; i < len(s); {
		c := s[i]
		if c >= ' ' && c != '"' && c != '\\' && c < utf8.RuneSelf {
			i++
			continue
		}
		wide, text := 1, ""
		switch r := rune(c); {
		case c >= utf8.RuneSelf:
			if r, wide = utf8.DecodeRuneInString(s[i:]); r == utf8.RuneError && wide == 1 {
				text = "\ufffd"
			}
		case c < ' ':
			text = `\u00` + string("0123456789abcdef"[c>>4]) + string("0123456789abcdef"[c&15])
		case c == '"':
			text = `\"`
		default:
			text = `\\`
		}
		if text != "" {
			b.WriteString(s[from:i])
			b.WriteString(text)
			from = i + wide
		}
		i += wide
	}
	b.WriteString(s[from:])
	b.WriteByte('"')
}
