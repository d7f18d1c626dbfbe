"""A paper as HTML, Markdown, PDF or plain data; the templates lie beside."""
