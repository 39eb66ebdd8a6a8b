using System.Collections.Frozen;
using System.IO.Hashing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace RackController.Page;

/// <summary>Style, script and drawings, out of the program itself. Their addresses carry a digest of their content, so that a browser may
/// keep them for good and never shows those of an older version.</summary>
internal static class PageFiles
{
    private const string Forever = "public, max-age=31536000, immutable";

    private static readonly FrozenDictionary<string, PageFile> files = Load();

    /// <summary>The address of a file.</summary>
    /// <param name="name">Its name in <c>Files</c>.</param>
    public static string Address(string name) => files[name].Address;

    /// <summary>Serves them.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        foreach (var file in files.Values)
        {
            routes.MapGet(file.Address, context => WriteAsync(file, context, Forever)).ForAnyone();
        }
    }

    /// <summary>Serves one of them under an address that stays, so that nobody keeps it for good.</summary>
    public static Task WriteAsync(string name, HttpContext context) => WriteAsync(files[name], context, "no-cache");

    private static async Task WriteAsync(PageFile file, HttpContext context, string cacheControl)
    {
        context.Response.Headers.CacheControl = cacheControl;
        context.Response.ContentType = file.ContentType;
        context.Response.ContentLength = file.Bytes.Length;
        await context.Response.Body.WriteAsync(file.Bytes, context.RequestAborted).ConfigureAwait(false);
    }

    private static FrozenDictionary<string, PageFile> Load()
    {
        var assembly = typeof(PageFiles).Assembly;
        return assembly.GetManifestResourceNames().ToFrozenDictionary(name => name, name =>
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            // Not for safety, which would have every service load a library of cryptography.
            var digest = Convert.ToHexStringLower(XxHash64.Hash(bytes));
            var (stem, extension) = (Path.GetFileNameWithoutExtension(name), Path.GetExtension(name));
            return new PageFile($"/files/{stem}-{digest}{extension}", TypeOf(extension), bytes);
        });
    }

    private static string TypeOf(string extension) => extension switch
    {
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        ".json" => "application/json",
        ".svg" => "image/svg+xml",
        _ => "application/octet-stream",
    };

    private sealed record PageFile(string Address, string ContentType, byte[] Bytes);
}
