"""Lessons as pages for any web server, a memory stick or an LMS."""
