using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using ZoneControl.Web.Components.Sheets;
using ZoneControl.Web.View;
using ZoneControl.Web.View.Sheets;

namespace ZoneControl.Web;

/// <summary>A sheet as one HTML document that opens without a network and prints.</summary>
public static class HtmlSheet
{
    private const string StyleName = "ZoneControl.Web.Style.sheet.css";

    /// <summary>The report's style sheet and what sheets add to it.</summary>
    public static string Style { get; } = HtmlReport.Style + ReadStyle();

    /// <summary>Renders a sheet.</summary>
    public static async Task<string> RenderAsync(SheetView sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        await using ServiceProvider services = new ServiceCollection().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        string body = await renderer.Dispatcher.InvokeAsync(async () =>
        {
            var parameters = ParameterView.FromDictionary(new Dictionary<string, object?>
            {
                [nameof(SheetPage.Sheet)] = sheet,
                [nameof(SheetPage.Style)] = Style,
            });
            return (await renderer.RenderComponentAsync<SheetPage>(parameters)).ToHtmlString();
        });
        return "<!DOCTYPE html>\n" + Unparted.Html(body) + "\n";
    }

    private static string ReadStyle()
    {
        using Stream stream = typeof(HtmlSheet).Assembly.GetManifestResourceStream(StyleName)
            ?? throw new InvalidOperationException($"The program was built without its style sheet {StyleName}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
