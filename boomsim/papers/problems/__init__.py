"""What a problem family is, where it is found, and how one problem is drawn and solved."""
