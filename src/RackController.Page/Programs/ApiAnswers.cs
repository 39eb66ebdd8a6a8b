using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.AspNetCore.Http;
using RackController.Service;

namespace RackController.Page;

/// <summary>Answers to programs.</summary>
internal static class ApiAnswers
{
    /// <summary>Says something in one line.</summary>
    public static Task SayAsync(HttpContext context, int code, string said) =>
        WriteAsync(context, code, new ApiAnswer(said), ApiJson.Default.ApiAnswer);

    /// <summary>Writes something.</summary>
    public static async Task WriteAsync<T>(HttpContext context, int code, T content, JsonTypeInfo<T> type)
    {
        context.Response.StatusCode = code;
        context.Response.ContentType = "application/json";
        await JsonSerializer.SerializeAsync(context.Response.Body, content, type, context.RequestAborted).ConfigureAwait(false);
    }

    /// <summary>Writes what is found out, or why it cannot be.</summary>
    public static async Task ToldAsync<T>(HttpContext context, JsonTypeInfo<T> type, Func<Task<T>> findOut)
    {
        T found;
        try
        {
            found = await findOut().ConfigureAwait(false);
        }
        catch (CouldNotRunException e)
        {
            await SayAsync(context, StatusCodes.Status503ServiceUnavailable, e.Message).ConfigureAwait(false);
            return;
        }

        await WriteAsync(context, StatusCodes.Status200OK, found, type).ConfigureAwait(false);
    }

    /// <summary>Reads what a program sends; null, after an answer, where it is not what is described.</summary>
    public static async Task<T?> ReadAsync<T>(HttpContext context, JsonTypeInfo<T> type)
        where T : class
    {
        try
        {
            if (await JsonSerializer.DeserializeAsync(context.Request.Body, type, context.RequestAborted).ConfigureAwait(false) is { } read)
            {
                return read;
            }

            await SayAsync(context, StatusCodes.Status422UnprocessableEntity, "the request is empty").ConfigureAwait(false);
        }
        catch (JsonException e)
        {
            // The reader's own words tell of types of ours.
            var where = e.Path is { Length: > 1 } path ? $"; look at {path}" : "";
            await SayAsync(
                context, StatusCodes.Status400BadRequest, $"the request is not the JSON that /api/openapi.json describes{where}")
                .ConfigureAwait(false);
        }

        return null;
    }
}
