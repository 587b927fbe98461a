using System.Net;

namespace ZoneControl.Web.Serving;

/// <summary>How the page is served.</summary>
public sealed record ServeOptions
{
    /// <summary>Address to listen on; the loopback address unless somebody asked for another.</summary>
    public IPAddress Address { get; init; } = IPAddress.Loopback;

    /// <summary>Port, 0 to 65,535; 0 takes any free one.</summary>
    public int Port { get; init; }

    /// <summary>The folder whose house, script and lesson files may be opened; null for none.</summary>
    public string? Folder { get; init; }

    /// <summary>The folder of the examples that travel with the program.</summary>
    public required string Examples { get; init; }

    /// <summary>The folder of the lessons that travel with the program.</summary>
    public required string Lessons { get; init; }

    /// <summary>Most people at once; the next one is told to wait.</summary>
    public int MostSessions { get; init; } = 60;
}
