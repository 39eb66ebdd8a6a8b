using Microsoft.AspNetCore.Http;

namespace RackController.Page;

/// <summary>Finds out who asks, and turns away whoever may not.</summary>
internal static class Doorman
{
    /// <summary>Lets a request through, or answers it.</summary>
    /// <param name="context">The request; its endpoint is known.</param>
    /// <param name="next">Whoever serves it.</param>
    public static Task AdmitAsync(HttpContext context, RequestDelegate next)
    {
        var visitor = new Visitor("somebody at this machine", Role.Configure);
        context.Features.Set(visitor);
        var needs = context.GetEndpoint()?.Metadata.GetMetadata<Needs>();
        if (context.GetEndpoint() is not null && (needs is null || !visitor.May(needs.Role)))
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return Task.CompletedTask;
        }

        return next(context);
    }
}
