using System.ComponentModel;
using Spectre.Console.Cli;

namespace ZoneControl.Cli.Commands;

/// <summary>What <c>serve</c> takes.</summary>
internal sealed class ServeSettings : CommandSettings
{
    [CommandOption("--port <PORT>")]
    [Description("Port to listen on; 0 takes any free one.")]
    [DefaultValue(8477)]
    public int Port { get; init; } = 8477;

    [CommandOption("--bind <ADDRESS>")]
    [Description("Address to listen on. Without it 127.0.0.1: only this machine reaches the page.")]
    public string? Bind { get; init; }

    [CommandOption("--folder <FOLDER>")]
    [Description("Offer the house, script and lesson files of this folder on the page. Nothing outside it is opened, nothing is written.")]
    public string? Folder { get; init; }
}
