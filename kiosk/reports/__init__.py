"""Printed sheets: values in, the bytes of a PDF out; and saving them where a person finds them."""
