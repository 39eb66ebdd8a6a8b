namespace RackController.Control;

/// <summary>Tells that proof tests of a rack or circuit are overdue. Hazard: an interlock that cannot act any more, which nobody
/// knows until it should. One alarm stands for all tests of its place, so that a new rack does not greet its grower with one for
/// every float.</summary>
internal sealed class ProofTestOverdue(CauseAndEffectRow row, Place place) : Interlock(row, place, [])
{
    private int count;
    private string first = "";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        count = 0;
        foreach (var item in facts.ProofTests)
        {
            if (facts.IsOverdue(item, agenda))
            {
                first = count == 0 ? item.Name : first;
                count++;
            }
        }

        return count > 0;
    }

    public override string Words(ClockFace clock) => count switch
    {
        0 => "no proof test is overdue",
        1 => $"the proof test of {first} is overdue",
        _ => $"{count} proof tests are overdue, that of {first} first",
    };
}
