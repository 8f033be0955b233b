package main

import "plainlift/calc/table"

// tableMessage is a text read as a table: rows of cells, with the line where
// each begins and what is wrong with it ("" for nothing); or, in words, why the
// text as a whole cannot be read.
func tableMessage(text string) map[string]any {
	t, err := table.Read(text)
	says := ""
	if err != nil {
		t, says = new(table.Table), err.Error()
	}
	return map[string]any{"type": "table", "error": says, "separator": t.Separator,
		"rows": each(t.Rows, func(r table.Row) any {
			return each(r.Cells, func(cell string) any { return cell })
		}),
		"lines": each(t.Rows, func(r table.Row) any { return r.Line }),
		"wrong": each(t.Rows, func(r table.Row) any { return r.Error }),
	}
}
