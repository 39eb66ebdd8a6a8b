namespace RackController.Control;

/// <summary>Counts for people: <c>once</c>, <c>3 times</c>.</summary>
internal static class CountWords
{
    public static string Times(this int count) => count == 1 ? "once" : $"{count} times";
}
