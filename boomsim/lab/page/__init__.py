"""One HTML file for home or a phone, every state worked out before."""
