using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using RackController.Service;

namespace RackController.Page;

/// <summary>The file of all people, <c>people.json</c> in the state folder. Service and verb both change it, one at a time.</summary>
/// <param name="path">Its path.</param>
internal sealed class PeopleFile(string path)
{
    /// <summary>What tells a changed file from the one that was read; null where there is none.</summary>
    public (long Time, long Length)? Stamp() =>
        new FileInfo(path) is { Exists: true } file ? (file.LastWriteTimeUtc.Ticks, file.Length) : null;

    /// <summary>Everybody in it; nobody where there is none.</summary>
    /// <exception cref="IOException">It cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    /// <exception cref="JsonException">It is not what this program writes.</exception>
    public ImmutableArray<Person> Read()
    {
        if (!File.Exists(path))
        {
            return [];
        }

        var content = JsonSerializer.Deserialize(File.ReadAllText(path), PeopleJson.Default.PeopleContent);
        return content is { People.IsDefault: false } && content.People.All(IsWhole)
            ? content.People
            : throw new JsonException("somebody in it has no name, tokens or hash");
    }

    /// <summary>Changes it.</summary>
    /// <param name="change">Gives who is to be in it, from who is; null to leave it.</param>
    /// <returns>Who is in it now.</returns>
    /// <exception cref="IOException">It cannot be read or written; nothing was changed.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read or written; nothing was changed.</exception>
    /// <exception cref="JsonException">It is not what this program writes.</exception>
    public ImmutableArray<Person> Change(Func<ImmutableArray<Person>, ImmutableArray<Person>?> change)
    {
        using var held = PrivateFile.Lock(path);
        var before = Read();
        if (change(before) is not { } after)
        {
            return before;
        }

        PrivateFile.Write(path, JsonSerializer.Serialize(new PeopleContent(after), PeopleJson.Default.PeopleContent) + "\n");
        return after;
    }

    private static bool IsWhole(Person person) =>
        PasswordRules.NameComplaint(person.Name) is null && Enum.IsDefined(person.Role) && !person.Tokens.IsDefault
        && person.PasswordKey.Length > 0 && person.Password.Iterations is > 0 and <= PasswordHash.MostIterations
        && person.Password.Salt.Length > 0 && person.Password.Hash.Length > 0;
}

/// <summary>What the file says.</summary>
/// <param name="People">Everybody.</param>
internal sealed record PeopleContent(ImmutableArray<Person> People);

/// <summary>How it is written, without reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true, UseStringEnumConverter = true,
    RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true, Converters = [typeof(InstantText)],
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow)]
[JsonSerializable(typeof(PeopleContent))]
internal sealed partial class PeopleJson : JsonSerializerContext;
