using System.Net;
using ZoneControl.Web.Live;
using ZoneControl.Web.Serving;
using ZoneControl.Web.Tests.Live;

namespace ZoneControl.Web.Tests.Serving;

/// <summary>The server gives what it should, to whom it should.</summary>
public sealed class ServingTests : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("zonecontrol-shelf-").FullName;
    private WebApplication _app = null!;
    private HttpClient _client = null!;

    public async ValueTask InitializeAsync()
    {
        _app = PageServer.Build(Options());
        await _app.StartAsync();
        _client = new HttpClient { BaseAddress = new Uri(_app.Urls.First()) };
    }

    public async ValueTask DisposeAsync()
    {
        _client.Dispose();
        await _app.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public void It_listens_on_the_loopback_address_only_unless_told_otherwise()
    {
        Assert.All(_app.Urls, url => Assert.True(IPAddress.IsLoopback(IPAddress.Parse(new Uri(url).Host))));
        Assert.Equal(IPAddress.Loopback, Options().Address);
    }

    [Theory]
    [InlineData("look/page.css", "--clay")]
    [InlineData("look/page.js", "zonecontrol")]
    [InlineData("", "<base href=\"/\"")]
    public async Task Its_own_files_have_their_bytes(string path, string holds)
    {
        string text = await _client.GetStringAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Contains(holds, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_from_elsewhere_is_refused_by_its_origin_and_a_strange_name_by_its_host()
    {
        Assert.Equal(HttpStatusCode.Forbidden, await StatusAsync("Origin", "http://elsewhere.example"));
        Assert.Equal(HttpStatusCode.Forbidden, await StatusAsync("Origin", "null"));
        Assert.Equal(HttpStatusCode.BadRequest, await StatusAsync("Host", "elsewhere.example"));
        Assert.Equal(HttpStatusCode.OK, await StatusAsync("Origin", _app.Urls.First()));
    }

    [Fact]
    public async Task Answers_forbid_foreign_scripts_and_frames()
    {
        using HttpResponseMessage answer = await _client.GetAsync(new Uri("", UriKind.Relative), TestContext.Current.CancellationToken);

        string policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("default-src 'self'", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("script-src", policy, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_body_that_is_too_large_is_refused_as_such()
    {
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, await PostAsync(2 * PageServer.LongestText + 1000));
        Assert.NotEqual(HttpStatusCode.RequestEntityTooLarge, await PostAsync(1000));
    }

    [Fact]
    public async Task A_form_without_the_page_s_own_token_is_refused() => Assert.Equal(HttpStatusCode.BadRequest, await PostAsync(10));

    [Fact]
    public void Only_files_of_the_examples_and_the_chosen_folder_are_on_the_list_and_no_link_out_of_it()
    {
        string outside = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + FileShelf.HouseEnding);
        File.Copy(Path.Combine(Examples.Folder, "pottery.house.toml"), Path.Combine(_folder, "mine.house.toml"));
        File.WriteAllText(outside, "name = \"secret\"");
        try
        {
            File.CreateSymbolicLink(Path.Combine(_folder, "link.house.toml"), outside);
            var shelf = new FileShelf(Options());

            Assert.Contains(new ShelfFile("mine.house.toml", "your folder"), shelf.Houses);
            Assert.DoesNotContain(shelf.Houses, file => file.Name == "link.house.toml");
            Assert.Throws<ArgumentException>(() => shelf.ReadHouse(new ShelfFile("link.house.toml", "your folder")));
            Assert.Throws<ArgumentException>(() => shelf.Text(new ShelfFile("../" + Path.GetFileName(outside), "your folder")));
            Assert.Throws<ArgumentException>(() => shelf.Text(new ShelfFile(outside, "examples")));
            Assert.NotNull(shelf.ReadHouse(new ShelfFile("mine.house.toml", "your folder")).House);
        }
        finally
        {
            File.Delete(outside);
        }
    }

    [Fact]
    public void The_next_person_beyond_the_most_is_told_to_wait_until_one_leaves()
    {
        var attendance = new Attendance(Options() with { MostSessions = 2 });
        Assert.True(attendance.Enter());
        Assert.True(attendance.Enter());
        Assert.False(attendance.Enter());
        Assert.Equal(2, attendance.Count);
        attendance.Leave();
        Assert.True(attendance.Enter());
    }

    [Fact]
    public void A_bench_that_falls_behind_is_not_made_to_catch_up_for_ever()
    {
        var pace = new Pace { Speed = 10 };
        var bench = new LiveBench(Examples.Pottery, null);
        pace.Begin();
        Thread.Sleep(1500); // nothing ticked meanwhile, as on a busy machine

        pace.Advance(bench, long.MaxValue);

        Assert.InRange(bench.NowMs, 1000, 2 * 250 * 10);
    }

    private async Task<HttpStatusCode> PostAsync(int bytes)
    {
        using var content = new FormUrlEncodedContent([new KeyValuePair<string, string>("text", new string('x', bytes))]);
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("", UriKind.Relative)) { Content = content };
        request.Headers.ExpectContinue = true; // ask first, so that a refusal is heard and not a hang-up
        using HttpResponseMessage answer = await _client.SendAsync(request, TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }

    private async Task<HttpStatusCode> StatusAsync(string header, string value)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri("", UriKind.Relative));
        request.Headers.TryAddWithoutValidation(header, value);
        using HttpResponseMessage answer = await _client.SendAsync(request, TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }

    private ServeOptions Options() => new()
    {
        Examples = Examples.Folder,
        Lessons = Path.Combine(Examples.Root, "simulator", "lessons"),
        Folder = _folder,
    };
}
