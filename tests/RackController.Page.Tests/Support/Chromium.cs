using Microsoft.Playwright;
using RackController.Testing;

namespace RackController.Page.Tests;

/// <summary>A browser without a window, shared by the tests of a class, so that classes run beside each other: Debian's, which
/// `tests/install-missing` brings.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private const string Program = "/usr/bin/chromium";

    private static readonly string[] arguments =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking", "--disable-component-update",
        "--disable-sync", "--no-first-run",
    ];

    private IPlaywright? driver;
    private IBrowser? browser;

    /// <summary>Opens a page of its own, which shares nothing with others.</summary>
    /// <param name="view">How large, and how lit.</param>
    /// <param name="address">Where to go first; null for nowhere.</param>
    /// <param name="withScript">Whether scripts run.</param>
    internal async Task<IPage> OpenAsync(View view, Uri? address = null, bool withScript = true)
    {
        var context = await browser!.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = view.Width, Height = view.Height },
            ColorScheme = view.IsDark ? ColorScheme.Dark : ColorScheme.Light,
            HasTouch = view.Width < 1000,
            JavaScriptEnabled = withScript,
            IgnoreHTTPSErrors = true,
        });
        var page = await context.NewPageAsync();
        if (address is not null)
        {
            await page.GotoAsync(address.ToString());
        }

        return page;
    }

    /// <summary>Keeps what a page looks like, for a person to look at.</summary>
    internal static Task KeepAsync(IPage page, string name) => page.ScreenshotAsync(new PageScreenshotOptions
    {
        Path = ShippedFiles.PathTo($"artifacts/screenshots/{name}.png"),
        FullPage = true,
    });

    public async Task InitializeAsync()
    {
        Assert.True(File.Exists(Program), $"{Program} is missing: tests/install-missing chromium");
        driver = await Playwright.CreateAsync();
        browser = await driver.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = Program, Args = arguments });
    }

    public async Task DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.CloseAsync();
        }

        driver?.Dispose();
    }
}

/// <summary>The screens that people look at: a phone, a tablet, a laptop or the wall.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Width">CSS pixels.</param>
/// <param name="Height">CSS pixels.</param>
/// <param name="IsDark">Whether the person prefers a dark screen.</param>
public sealed record View(string Name, int Width, int Height, bool IsDark)
{
    public static readonly View Phone = new("phone", 360, 740, IsDark: false);
    public static readonly View Tablet = new("tablet", 820, 1180, IsDark: false);
    public static readonly View Laptop = new("laptop", 1440, 900, IsDark: false);

    public static readonly IReadOnlyList<View> All =
    [
        Phone, Tablet, Laptop, Phone with { IsDark = true }, Tablet with { IsDark = true }, Laptop with { IsDark = true },
    ];

    /// <summary>The names of every screen, light and dark.</summary>
    public static TheoryData<string> Names() => [.. All.Select(view => view.ToString())];

    /// <summary>The screen of a name.</summary>
    public static View Of(string name) => All.Single(view => view.ToString() == name);

    public override string ToString() => $"{Name}-{(IsDark ? "dark" : "light")}";
}
