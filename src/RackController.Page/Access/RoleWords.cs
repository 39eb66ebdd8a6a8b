namespace RackController.Page;

/// <summary>Roles as people read and write them.</summary>
public static class RoleWords
{
    /// <summary>Every role in one word, the least first.</summary>
    public static IReadOnlyList<string> All { get; } = [.. Enum.GetValues<Role>().Select(Of)];

    /// <summary>A role in one word.</summary>
    /// <param name="role">The role.</param>
    public static string Of(Role role) => role switch
    {
        Role.View => "view",
        Role.Operate => "operate",
        _ => "configure",
    };

    /// <summary>The role of a word; null for any other word.</summary>
    /// <param name="word">The word.</param>
    public static Role? Parse(string word) => Enum.GetValues<Role>().Cast<Role?>().FirstOrDefault(role => Of(role!.Value) == word);
}
