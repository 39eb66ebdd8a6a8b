using Microsoft.AspNetCore.Http;
using NodaTime;

namespace RackController.Page;

/// <summary>The cookie of a session. No script reads it, no other site's page sends it, and beyond this machine it
/// goes by HTTPS only.</summary>
internal static class SessionCookie
{
    /// <summary>What it says; null where there is none.</summary>
    public static string? Read(HttpRequest request) => request.Cookies[NameFor(request)] is { Length: > 0 } secret ? secret : null;

    /// <summary>Gives it to the browser.</summary>
    public static void Give(HttpContext context, string secret) => context.Response.Cookies.Append(
        NameFor(context.Request), secret, How(context.Request, Sessions.Longest));

    /// <summary>Takes it back.</summary>
    public static void TakeBack(HttpContext context) => context.Response.Cookies.Append(
        NameFor(context.Request), "", How(context.Request, Duration.Zero));

    // Browsers keep a name with this prefix from being set by anything but this very host over HTTPS (RFC 6265bis).
    private static string NameFor(HttpRequest request) => request.IsHttps ? "__Host-session" : "session";

    private static CookieOptions How(HttpRequest request, Duration age) => new()
    {
        HttpOnly = true,
        Secure = request.IsHttps,
        SameSite = SameSiteMode.Strict,
        Path = "/",
        MaxAge = age.ToTimeSpan(),
        IsEssential = true,
    };
}
