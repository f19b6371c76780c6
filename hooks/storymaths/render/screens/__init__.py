"""The class screen: a session for thirty children to look at, and its activities to do together."""
