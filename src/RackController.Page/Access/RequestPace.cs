using System.Net;
using Microsoft.AspNetCore.Http;

namespace RackController.Page;

/// <summary>How fast one address may ask: a bucket that fills by the second. A stop is never counted. The rate limiter of ASP.NET Core
/// would do, but its partitions wake the board ten times a second for as long as the page is served (its source, from memory).</summary>
/// <param name="time">What it is counted by; only its monotonic part is used.</param>
internal sealed class RequestPace(TimeProvider time)
{
    /// <summary>How many may come at once: a page, its files and what a person opens in haste.</summary>
    public const int AtOnce = 300;

    /// <summary>How many may come in every second.</summary>
    public const int PerS = 60;

    // Whoever fills it with addresses only makes full buckets of the oldest.
    private const int MostKept = 1000;

    private readonly Lock gate = new();
    private readonly Dictionary<IPAddress, Bucket> buckets = [];

    /// <summary>Lets a request through, or answers it.</summary>
    /// <param name="context">The request.</param>
    /// <param name="next">Whoever serves it.</param>
    public Task AdmitAsync(HttpContext context, RequestDelegate next)
    {
        var isStop = HttpMethods.IsPost(context.Request.Method)
            && context.Request.Path.Value?.EndsWith("/stop", StringComparison.Ordinal) == true;
        if (isStop || TryTake(AddressWords.Counted(context.Connection.RemoteIpAddress)))
        {
            return next(context);
        }

        context.Response.Headers.RetryAfter = "1";
        return Answer.SayAsync(context, StatusCodes.Status429TooManyRequests, "Too many requests at once: ask again in a second.");
    }

    /// <summary>Takes one request of an address.</summary>
    /// <param name="address">The address.</param>
    /// <returns>Whether there was one.</returns>
    public bool TryTake(IPAddress address)
    {
        lock (gate)
        {
            var now = time.GetTimestamp();
            var left = buckets.TryGetValue(address, out var bucket)
                ? Math.Min(AtOnce, bucket.Left + time.GetElapsedTime(bucket.At, now).TotalSeconds * PerS)
                : AtOnce;
            var isThere = left >= 1;
            buckets[address] = new Bucket(isThere ? left - 1 : left, now);
            if (buckets.Count > MostKept)
            {
                buckets.Remove(buckets.MinBy(entry => entry.Value.At).Key);
            }

            return isThere;
        }
    }

    private readonly record struct Bucket(double Left, long At);
}
