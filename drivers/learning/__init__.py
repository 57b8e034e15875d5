"""Works out how an unknown balance writes its lines, from what it sent while a load came and went.

Pure: packets with their times in, a LineShape or the reason for having none out.
"""
