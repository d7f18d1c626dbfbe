"""The main job: ways to one boom length beside each other."""
