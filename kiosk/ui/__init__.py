"""The only room that knows Kivy."""
