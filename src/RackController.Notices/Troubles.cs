namespace RackController.Notices;

/// <summary>What can keep notices from being told at all.</summary>
internal enum Trouble
{
    /// <summary>The journal cannot be read.</summary>
    JournalUnreadable,

    /// <summary>What must outlast this process cannot be written.</summary>
    FileUnwritable,

    /// <summary>What an earlier process kept made no sense.</summary>
    KeptLost,
}

/// <summary>Says each trouble once, and which of them to show.</summary>
/// <param name="say">Writes a line of the log.</param>
internal sealed class Troubles(Action<string> say)
{
    private readonly SortedDictionary<Trouble, string> standing = [];

    /// <summary>The worst of them in one line; null while there is none.</summary>
    public string? Worst => standing.Values.FirstOrDefault();

    /// <summary>Something is wrong, or is right again.</summary>
    /// <param name="trouble">What.</param>
    /// <param name="words">It in one line; null when it is right.</param>
    public void Set(Trouble trouble, string? words)
    {
        if (words is null)
        {
            standing.Remove(trouble);
        }
        else
        {
            if (standing.GetValueOrDefault(trouble) != words)
            {
                say(words);
            }

            standing[trouble] = words;
        }
    }
}
