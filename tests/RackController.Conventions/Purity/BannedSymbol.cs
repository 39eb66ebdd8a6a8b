namespace RackController.Conventions.Purity;

/// <summary>One line of the list of banned symbols: the kind of symbol, its name, and what to do instead.</summary>
internal sealed record BannedSymbol(char Kind, string Name, string Cure)
{
    public static IReadOnlyList<BannedSymbol> All { get; } = [.. Repository.Lines("src/BannedSymbols.txt").Select(Parse)];

    /// <summary>Whether a foreign type, as <c>Namespace.Type</c>, may not be named.</summary>
    public bool ForbidsType(string type) => Kind switch
    {
        'T' => type == Name || type.StartsWith($"{Name}.", StringComparison.Ordinal),
        'N' => type.StartsWith($"{Name}.", StringComparison.Ordinal),
        _ => false,
    };

    /// <summary>Whether a foreign member, as <c>Namespace.Type.Member</c>, may not be used.</summary>
    public bool ForbidsMember(string member) => Kind == 'M' && member == Name;

    private static BannedSymbol Parse(string line)
    {
        var semicolon = line.IndexOf(';', StringComparison.Ordinal);
        return new(line[0], line[2..semicolon], line[(semicolon + 1)..]);
    }
}
