namespace RackController.Control;

/// <summary>Tells that a proof test of a rack or circuit failed and was not passed since. Hazard: whatever goes by the sensor or
/// relay cannot protect any more.</summary>
internal sealed class ProofTestFailed(CauseAndEffectRow row, Place place) : Interlock(row, place, [])
{
    private string failed = "";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        foreach (var item in facts.ProofTests)
        {
            if (item.HasFailed)
            {
                failed = item.Name;
                return true;
            }
        }

        return false;
    }

    public override string Words(ClockFace clock) => Present
        ? $"{failed} failed its proof test"
        : $"{failed} passed its proof test";
}
