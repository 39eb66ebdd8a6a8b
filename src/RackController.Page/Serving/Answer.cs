using Microsoft.AspNetCore.Http;
using RazorSlices;

namespace RackController.Page;

/// <summary>Ways to answer.</summary>
internal static class Answer
{
    /// <summary>Answers with a page.</summary>
    public static async Task WithAsync(HttpContext context, RazorSlice page)
    {
        context.Response.ContentType = "text/html; charset=utf-8";
        page.HttpContext = context;
        await page.RenderAsync(context.Response.BodyWriter, cancellationToken: context.RequestAborted).ConfigureAwait(false);
    }

    /// <summary>Answers with one line.</summary>
    public static Task SayAsync(HttpContext context, int code, string line)
    {
        context.Response.StatusCode = code;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(line + "\n", context.RequestAborted);
    }

    /// <summary>Sends the browser to another page, which it asks for anew.</summary>
    public static Task SeeOther(HttpContext context, string address)
    {
        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = address;
        return Task.CompletedTask;
    }
}
