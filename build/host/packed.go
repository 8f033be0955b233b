package host

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"

	"github.com/andybalholm/brotli"
)

// packed keeps the compressed form of every file that was asked for, until the
// file changes.
type packed struct {
	quality int
	mu      sync.Mutex
	files   map[string]*file
}

// file is one form of one file. Its lock is held while it is compressed, so
// that the work is done once and other files do not wait.
type file struct {
	mu   sync.Mutex
	tag  string
	body string
}

func newPacked(quality int) *packed { return &packed{quality: quality, files: map[string]*file{}} }

// read returns a file's bytes in the best of the accepted encodings, and which
// one that is; "" is none.
func (p *packed) read(name string, info os.FileInfo, accepted []string) (body, encoding string, err error) {
	if len(accepted) > 0 && squeezable(name) && info.Size() > 500 {
		encoding = accepted[0]
	}
	p.mu.Lock()
	f := p.files[name+"\x00"+encoding]
	if f == nil {
		f = new(file)
		p.files[name+"\x00"+encoding] = f
	}
	p.mu.Unlock()
	f.mu.Lock()
	defer f.mu.Unlock()
	if t := tag(info, encoding); f.tag != t {
		raw, err := os.ReadFile(name)
		if err != nil {
			return "", "", err
		}
		f.tag, f.body = t, string(p.pack(raw, encoding))
	}
	return f.body, encoding, nil
}

func (p *packed) pack(raw []byte, encoding string) []byte {
	switch encoding {
	case "br":
		return Brotli(raw, p.quality)
	case "gzip":
		return Gzip(raw, gzip.BestCompression)
	}
	return raw
}

// Brotli returns raw compressed at a quality from 0 to 11.
func Brotli(raw []byte, quality int) []byte {
	var b bytes.Buffer
	w := brotli.NewWriterOptions(&b, brotli.WriterOptions{Quality: quality, LGWin: 22})
	w.Write(raw) // a buffer takes everything
	w.Close()
	return b.Bytes()
}

// Gzip returns raw compressed at a level from 1 to 9.
func Gzip(raw []byte, level int) []byte {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, level)
	if err != nil {
		panic("host: gzip level out of range")
	}
	w.Write(raw)
	w.Close()
	return b.Bytes()
}

// squeezable reports whether compressing a file is worth the trouble.
func squeezable(name string) bool {
	switch filepath.Ext(name) {
	case ".png", ".ico":
		return false
	}
	return true
}

// tag names one state of one form of a file.
func tag(info os.FileInfo, encoding string) string {
	return fmt.Sprintf(`"%x-%x%s"`, info.ModTime().UnixNano(), info.Size(), encoding)
}

// accepted returns which of our encodings the browser takes, the best first.
func accepted(r *http.Request) []string {
	takes := map[string]bool{}
	for item := range strings.SplitSeq(r.Header.Get("Accept-Encoding"), ",") {
		name, q, _ := strings.Cut(strings.TrimSpace(item), ";")
		weight := 1.0
		if value, ok := strings.CutPrefix(strings.TrimSpace(q), "q="); ok {
			weight, _ = strconv.ParseFloat(value, 64)
		}
		takes[strings.ToLower(strings.TrimSpace(name))] = weight > 0
	}
	var names []string
	for _, name := range []string{"br", "gzip"} {
		if takes[name] {
			names = append(names, name)
		}
	}
	return names
}
