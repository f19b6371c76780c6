"""Invented old plans in many forms, made when a test asks for them. ``SEEN`` were before the reader while it was written,
``HELD_BACK`` were not.
"""
