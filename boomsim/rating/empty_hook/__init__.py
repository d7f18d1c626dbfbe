"""How far out the crane stands with nothing but its hook block and slings on the rope."""
