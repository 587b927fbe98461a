using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using ZoneControl.Web.Components;
using ZoneControl.Web.View;

namespace ZoneControl.Web;

/// <summary>The report as one HTML document that opens without a network, made by the page's own components.</summary>
public static class HtmlReport
{
    private const string StyleName = "ZoneControl.Web.Style.report.css";

    /// <summary>The style sheet shared by report and page.</summary>
    public static string Style { get; } = ReadStyle();

    /// <summary>Renders a report.</summary>
    public static async Task<string> RenderAsync(ReportView report)
    {
        ArgumentNullException.ThrowIfNull(report);
        await using ServiceProvider services = new ServiceCollection().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        string body = await renderer.Dispatcher.InvokeAsync(async () =>
        {
            var parameters = ParameterView.FromDictionary(new Dictionary<string, object?>
            {
                [nameof(ReportPage.Report)] = report,
                [nameof(ReportPage.Style)] = Style,
            });
            return (await renderer.RenderComponentAsync<ReportPage>(parameters)).ToHtmlString();
        });
        return "<!DOCTYPE html>\n" + Unparted.Html(body) + "\n";
    }

    private static string ReadStyle()
    {
        using Stream stream = typeof(HtmlReport).Assembly.GetManifestResourceStream(StyleName)
            ?? throw new InvalidOperationException($"The program was built without its style sheet {StyleName}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
