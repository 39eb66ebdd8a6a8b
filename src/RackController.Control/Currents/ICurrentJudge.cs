namespace RackController.Control;

/// <summary>Judges which loads of a circuit draw current. Looked at again with nothing changed, it judges the same.</summary>
internal interface ICurrentJudge
{
    /// <summary>Follows what changed, says what it knows as facts, and names on the agenda when it will know more.</summary>
    void Look(Facts facts, Agenda agenda);
}
