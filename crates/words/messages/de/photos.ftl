# Fotos von Bögen
