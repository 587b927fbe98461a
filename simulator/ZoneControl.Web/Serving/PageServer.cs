using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components.Server.Circuits;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using ZoneControl.Web.Board;
using ZoneControl.Web.Pages;

namespace ZoneControl.Web.Serving;

/// <summary>Builds the web server of the page.</summary>
public static class PageServer
{
    /// <summary>The longest text that may be pasted or opened, bytes.</summary>
    public const int LongestText = 256 * 1024;

    /// <summary>The server, not yet started.</summary>
    public static WebApplication Build(ServeOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            // What belongs to the program is beside the program, wherever it is started from.
            ContentRootPath = AppContext.BaseDirectory,
            EnvironmentName = "Production",
        });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.Listen(options.Address, options.Port);
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = 2 * LongestText;
            kestrel.Limits.MaxConcurrentConnections = 40L * options.MostSessions;
        });
        builder.Logging.ClearProviders();
        builder.Logging.AddConsole(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        builder.Logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error); // its keys never leave memory
        AddServices(builder.Services, options);
        WebApplication app = builder.Build();
        Configure(app);
        return app;
    }

    private static void AddServices(IServiceCollection services, ServeOptions options)
    {
        // Keys live as long as the program; nothing is written to the person's home.
        services.AddDataProtection().UseEphemeralDataProtectionProvider();
        services.AddAntiforgery();
        services.AddRazorComponents().AddInteractiveServerComponents(circuit =>
        {
            circuit.DisconnectedCircuitMaxRetained = options.MostSessions;
            circuit.DisconnectedCircuitRetentionPeriod = TimeSpan.FromSeconds(30);
        }).AddHubOptions(hub => hub.MaximumReceiveMessageSize = 2 * LongestText);
        if (IPAddress.IsLoopback(options.Address))
        {
            // A page from elsewhere must not reach this one under a name of its own that leads here.
            services.Configure<HostFilteringOptions>(filter => filter.AllowedHosts = ["localhost", "127.0.0.1", "[::1]"]);
        }

        services.AddSingleton(options);
        services.AddSingleton<FileShelf>();
        services.AddSingleton<Attendance>();
        services.AddSingleton<OneAtATime>();
        services.AddScoped<Presence>();
        services.AddScoped<CircuitHandler>(provider => provider.GetRequiredService<Presence>());
        services.AddScoped<Desk>();
        services.AddScoped<LessonProgress>();
    }

    private static void Configure(WebApplication app)
    {
        app.UseHostFiltering();
        app.Use(Guard);
        app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapGet("/look/{name}", (string name) => Look.Find(name) is { } file
            ? Results.Text(file.Text, file.Type)
            : Results.NotFound());
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(
            server => server.ContentSecurityFrameAncestorsPolicy = null); // said for every answer below
    }

    /// <summary>Only the page's own scripts and frames, and only requests that come from the page itself.</summary>
    private static Task Guard(HttpContext context, RequestDelegate next)
    {
        IHeaderDictionary headers = context.Response.Headers;
        headers.ContentSecurityPolicy =
            "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; object-src 'none'; " +
            "base-uri 'self'; form-action 'self'; frame-ancestors 'none'";
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        string origin = context.Request.Headers.Origin.ToString();
        bool foreign = origin.Length > 0
            && !(Uri.TryCreate(origin, UriKind.Absolute, out Uri? from) && from.Authority == context.Request.Host.Value);
        bool tooLarge = context.Request.ContentLength > 2 * LongestText;
        if (!foreign && !tooLarge)
            return next(context);
        context.Response.StatusCode = foreign ? StatusCodes.Status403Forbidden : StatusCodes.Status413PayloadTooLarge;
        return Task.CompletedTask;
    }
}
