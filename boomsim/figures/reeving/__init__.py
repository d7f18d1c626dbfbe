"""Picture of how a boom is reeved."""
