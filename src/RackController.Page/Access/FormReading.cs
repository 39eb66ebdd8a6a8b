using Microsoft.AspNetCore.Http;

namespace RackController.Page;

/// <summary>Reads forms that anybody may send.</summary>
internal static class FormReading
{
    /// <summary>The fields of a form; null once the request was answered, because it is no form, too large or too slow.</summary>
    public static async Task<IFormCollection?> ReadAsync(HttpContext context)
    {
        try
        {
            return await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        }
        catch (BadHttpRequestException e)
        {
            await Answer.SayAsync(context, e.StatusCode, e.Message).ConfigureAwait(false);
        }
        catch (Exception e) when (e is InvalidDataException or InvalidOperationException)
        {
            await Answer.SayAsync(context, StatusCodes.Status400BadRequest, "This is no form that can be read.").ConfigureAwait(false);
        }

        return null;
    }
}
