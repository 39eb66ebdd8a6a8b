namespace RackController.Page;

/// <summary>What somebody signs in with, in a few words, so that they know it again in a list.</summary>
internal static class DeviceWords
{
    // Most browsers claim to be others too, so the more particular names come first.
    private static readonly (string Part, string Word)[] browsers =
    [
        ("Edg/", "Edge"), ("OPR/", "Opera"), ("Firefox/", "Firefox"), ("FxiOS/", "Firefox"), ("Chrome/", "Chrome"), ("CriOS/", "Chrome"),
        ("Safari/", "Safari"),
    ];

    private static readonly (string Part, string Word)[] systems =
    [
        ("iPhone", "iPhone"), ("iPad", "iPad"), ("Android", "Android"), ("Windows", "Windows"), ("Mac OS X", "Mac"), ("CrOS", "Chromebook"),
        ("Linux", "Linux"),
    ];

    /// <summary>The words.</summary>
    /// <param name="userAgent">What the browser says of itself.</param>
    public static string Of(string userAgent) => (Find(browsers, userAgent), Find(systems, userAgent)) switch
    {
        ({ } browser, { } system) => $"{browser} on {system}",
        ({ } browser, null) => browser,
        (null, { } system) => $"a browser on {system}",
        _ => "an unknown browser",
    };

    private static string? Find((string Part, string Word)[] words, string text) =>
        words.FirstOrDefault(word => text.Contains(word.Part, StringComparison.Ordinal)).Word;
}
