"""The main job: configurations of one length beside each other, and why one carries more."""
