"""Properties that screens bind to; no widgets."""
