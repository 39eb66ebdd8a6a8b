using Microsoft.AspNetCore.Http;

namespace RackController.Page;

/// <summary>Where a request comes from, as the browser says that sends it.</summary>
internal static class SameSite
{
    /// <summary>Whether a browser sent it for a page of somebody else. What is no browser says nothing, and is believed here.</summary>
    /// <param name="request">The request.</param>
    public static bool IsForeign(HttpRequest request)
    {
        // The first is said by browsers to this machine and over HTTPS (Fetch Metadata), the second with every form that is posted.
        if (request.Headers["Sec-Fetch-Site"].ToString() is { Length: > 0 } site)
        {
            return site is not ("same-origin" or "none");
        }

        return request.Headers.Origin.ToString() is { Length: > 0 } origin
            && !string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Whether it was sent to this machine by one of its own names. Without that, a page from elsewhere whose name suddenly leads
    /// here could read what is meant for this machine only.</summary>
    /// <param name="request">The request.</param>
    public static bool NamesThisMachine(HttpRequest request) => request.Host.Host is "localhost" or "127.0.0.1" or "[::1]";

    /// <summary>Whether somebody passed it on, so that the address it comes from is not that of whoever asks.</summary>
    /// <param name="request">The request.</param>
    public static bool IsPassedOn(HttpRequest request) =>
        request.Headers.ContainsKey("Forwarded") || request.Headers.ContainsKey("X-Forwarded-For") || request.Headers.ContainsKey("Via");
}
