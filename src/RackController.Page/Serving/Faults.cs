using Microsoft.AspNetCore.Http;
using RackController.Service;

namespace RackController.Page;

/// <summary>What an endpoint did not foresee: whoever asked gets one line, and the log says why.</summary>
/// <param name="rack">Whose log.</param>
internal sealed class Faults(IServedRack rack)
{
    /// <summary>Serves a request, and answers for what goes wrong.</summary>
    /// <param name="context">The request.</param>
    /// <param name="next">Whoever serves it.</param>
    public async Task AnswerForAsync(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context).ConfigureAwait(false);
        }
        catch (SilentRackException e) when (!context.Response.HasStarted)
        {
            await Answer.SayAsync(context, StatusCodes.Status503ServiceUnavailable, e.Message).ConfigureAwait(false);
        }
        catch (Exception e) when (!context.RequestAborted.IsCancellationRequested && e is not BadHttpRequestException)
        {
            rack.Complain($"the page could not answer {context.Request.Method} {context.Request.Path}", e);
            if (!context.Response.HasStarted)
            {
                context.Response.ContentLength = null;
                await Answer.SayAsync(
                    context, StatusCodes.Status500InternalServerError,
                    $"This could not be done: {e.Message.TrimEnd('.')}. The racks are driven as before; the log says more.")
                    .ConfigureAwait(false);
            }
        }
    }
}
