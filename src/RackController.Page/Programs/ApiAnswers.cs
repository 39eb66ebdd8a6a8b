using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using Microsoft.AspNetCore.Http;
using RackController.Service;

namespace RackController.Page;

/// <summary>Answers to programs, put together as nodes of JSON. A type for each, with a serializer of its own, would take 28 kB of
/// a native build, most of it in memory whether anybody asks or not.</summary>
internal static class ApiAnswers
{
    /// <summary>Says something in one line.</summary>
    public static Task SayAsync(HttpContext context, int code, string said) =>
        WriteAsync(context, code, new JsonObject { ["said"] = said });

    /// <summary>Writes something.</summary>
    public static Task WriteAsync(HttpContext context, int code, JsonNode content)
    {
        context.Response.StatusCode = code;
        return WriteAsync(context, json => content.WriteTo(json));
    }

    /// <summary>Writes something long, piece by piece.</summary>
    public static async Task WriteAsync(HttpContext context, Action<Utf8JsonWriter> write)
    {
        context.Response.ContentType = "application/json";
        using (var json = new Utf8JsonWriter(context.Response.BodyWriter))
        {
            write(json);
        }

        await context.Response.BodyWriter.FlushAsync(context.RequestAborted).ConfigureAwait(false);
    }

    /// <summary>Writes what is found out, or why it cannot be.</summary>
    public static Task ToldAsync(HttpContext context, Func<Task<JsonNode>> findOut) =>
        ToldAsync(context, findOut, (json, found) => found.WriteTo(json));

    /// <summary>Writes what is found out, piece by piece, or why it cannot be.</summary>
    public static async Task ToldAsync<T>(HttpContext context, Func<Task<T>> findOut, Action<Utf8JsonWriter, T> write)
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

        await WriteAsync(context, json => write(json, found)).ConfigureAwait(false);
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
