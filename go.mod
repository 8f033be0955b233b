module plainlift

go 1.26.0

require (
	github.com/andybalholm/brotli v1.3.0 // indirect
	github.com/chromedp/cdproto v0.159.0 // indirect
	github.com/chromedp/chromedp v0.23.0 // indirect
	github.com/go-json-experiment/json v0.0.0-20260213210345-44df1a37e875 // indirect
	github.com/hack-pad/safejs v0.1.0 // indirect
	github.com/yuin/goldmark v1.8.7 // indirect
	golang.org/x/net v0.62.0 // indirect
	gonum.org/v1/gonum v0.17.0 // indirect
)
