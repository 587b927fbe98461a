namespace ZoneControl.Web.Tests;
public class Shot { [Fact] public async Task Writes() { if (Environment.GetEnvironmentVariable("SHOT") is { } p) { File.WriteAllText(p, await HtmlReport.RenderAsync(Morning.Report())); File.WriteAllText(p + ".fail.html", await HtmlReport.RenderAsync(Morning.Report(passed: false))); } } }
