"""Reads an old lesson plan of any form as lines: a word processor's file or Markdown."""
