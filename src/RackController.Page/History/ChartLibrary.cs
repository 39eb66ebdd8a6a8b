using System.IO.Compression;
using Microsoft.AspNetCore.Http;
using RackController.Bench;

namespace RackController.Page;

/// <summary>The library that draws charts: the one that reports carry, sent as a file that a browser keeps for good. It is large, so it
/// is compressed; and asked for once by each browser, so that is done each time and nothing of it is kept in memory.</summary>
internal static class ChartLibrary
{
    /// <summary>Where it is. A newer one has another address: it is told by its length, since reading all of it at every start costs a
    /// megabyte.</summary>
    public static string Address { get; } = $"/files/charts-{Length()}.js";

    /// <summary>Sends it.</summary>
    public static async Task WriteAsync(HttpContext context)
    {
        var response = context.Response;
        response.ContentType = "text/javascript; charset=utf-8";
        response.Headers.CacheControl = "public, max-age=31536000, immutable";
        response.Headers.Vary = "Accept-Encoding";
        using var library = ReportCharts.OpenLibrary();
        var accepted = context.Request.Headers.AcceptEncoding.ToString();
        if (accepted.Contains("br", StringComparison.OrdinalIgnoreCase))
        {
            response.Headers.ContentEncoding = "br";
            await using var brotli = new BrotliStream(response.Body, CompressionLevel.Optimal, leaveOpen: true);
            await library.CopyToAsync(brotli, context.RequestAborted).ConfigureAwait(false);
        }
        else if (accepted.Contains("gzip", StringComparison.OrdinalIgnoreCase))
        {
            response.Headers.ContentEncoding = "gzip";
            await using var gzip = new GZipStream(response.Body, CompressionLevel.Optimal, leaveOpen: true);
            await library.CopyToAsync(gzip, context.RequestAborted).ConfigureAwait(false);
        }
        else
        {
            await library.CopyToAsync(response.Body, context.RequestAborted).ConfigureAwait(false);
        }
    }

    private static long Length()
    {
        using var library = ReportCharts.OpenLibrary();
        return library.Length;
    }
}
