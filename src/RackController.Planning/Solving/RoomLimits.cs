namespace RackController.Planning;

/// <summary>No more tiers are lit than there are, and no more trays stand in the dark than fit.</summary>
internal static class RoomLimits
{
    /// <summary>Puts the limits into a model.</summary>
    /// <param name="use">Who is where.</param>
    /// <param name="plan">The case.</param>
    public static void Add(RoomUse use, PlanningCase plan)
    {
        for (var span = 0; span < plan.Spans.Length; span++)
        {
            for (var number = 0; number < plan.Classes.Length; number++)
            {
                use.Model.Add(use.LitOf(span, number) <= plan.Classes[number].Tiers.Length);
            }

            if (use.Dark(span) is { } dark)
            {
                use.Model.Add(dark <= plan.Space.DarkTrays);
            }
        }
    }
}
