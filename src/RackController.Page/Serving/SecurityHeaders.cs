using Microsoft.AspNetCore.Http;

namespace RackController.Page;

/// <summary>What every answer tells a browser: load nothing from elsewhere, run no script that the page did not bring, show it in no
/// frame, keep nothing of it.</summary>
internal static class SecurityHeaders
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; "
        + "frame-ancestors 'none'; base-uri 'none'";

    public static Task AddAsync(HttpContext context, RequestDelegate next)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
        headers.CacheControl = "no-store";
        return next(context);
    }

    /// <summary>Has browsers come by HTTPS only, for a year. With a certificate of our own that would lock out whoever loses its
    /// key.</summary>
    public static Task InsistOnHttpsAsync(HttpContext context, RequestDelegate next)
    {
        context.Response.Headers.StrictTransportSecurity = "max-age=31536000";
        return next(context);
    }
}
