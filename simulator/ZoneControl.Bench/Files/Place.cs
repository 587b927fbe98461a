namespace ZoneControl.Bench.Files;

/// <summary>A place in a text file; both count from 1, and 0 means the file as a whole.</summary>
internal readonly record struct Place(int Line, int Column);
