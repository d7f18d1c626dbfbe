"""Answer sheets with bubbles: laid out, drawn, and read again from scans."""
