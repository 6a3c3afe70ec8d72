using System;
using System.Globalization;
using System.Linq;
using System.Xml.Linq;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>The power circuit: line contact, sections with their contacts, armature.</summary>
internal static class CircuitDrawing
{
    private const double Cell = 104;
    private const double Margin = 20;
    private const double RowHeight = 118;

    /// <summary>Draws the circuit.</summary>
    public static Markup Draw(StarterDesign design, MachineKind kind)
    {
        string sections = string.Join(", ", design.Stages.Select(stage => $"{stage.Stage} of {Quantity.Ohms(stage.SectionOhms)}"));
        string description = $"Power circuit: supply, line contact K, sections {sections}, each with a contact across it, and the armature A1 to A2 in series.";
        Markup caption = new("Power circuit. Contact K is the line; the contact with a stage’s number shorts the section below it. A1 and A2 are the armature’s terminals (IEC 60034-8); symbols after IEC 60617. " + LeftOut(kind));
        return Figure.Wrap("circuit", caption, Circuit(design, description, "wide", 8), Circuit(design, description, "narrow", 3));
    }

    private static string LeftOut(MachineKind kind) => kind switch
    {
        MachineKind.Series => "The series winding D1–D2 stands in the armature’s resistance; every protective device is left out.",
        MachineKind.LongShuntCompound or MachineKind.ShortShuntCompound => "The series winding D1–D2 stands in the armature’s resistance; the shunt winding and every protective device are left out.",
        MachineKind.PermanentMagnet => "Every protective device is left out.",
        _ => "The field circuit and every protective device are left out.",
    };

    private static XElement Circuit(StarterDesign design, string description, string style, int mostInRow)
    {
        int cells = design.StageCount + 2, perRow = Math.Min(cells, mostInRow);
        int rows = (cells + perRow - 1) / perRow;
        XElement canvas = Figure.Canvas(style, description, 2 * Margin + Math.Max(perRow, mostInRow * 3 / 4) * Cell, rows * RowHeight);
        for (int i = 0; i < cells; i++)
        {
            double x = Margin + i % perRow * Cell, y = i / perRow * RowHeight + 62;
            if (i == 0) AddLine(canvas, x, y);
            else if (i <= design.StageCount) AddSection(canvas, x, y, design.Stages[i - 1]);
            else AddArmature(canvas, x, y, design.ArmatureOhms);
            // The wire goes on in the next row.
            if (i % perRow == perRow - 1 && i < cells - 1) Say(canvas, x + Cell, y - 8, "…", "end");
            if (i > 0 && i % perRow == 0) Say(canvas, x, y - 8, "…", "start");
        }

        return canvas;
    }

    private static void AddLine(XElement canvas, double x, double y)
    {
        Circle(canvas, x + 4, y, 4);
        Path(canvas, $"M{Figure.Short(x + 8)} {Figure.Short(y)}H{Figure.Short(x + 36)}M{Figure.Short(x + 66)} {Figure.Short(y)}H{Figure.Short(x + Cell)}");
        Contact(canvas, x + 36, y);
        Say(canvas, x + 4, y - 12, "+", "middle");
        Say(canvas, x + 51, y - 14, "K", "middle");
    }

    private static void AddSection(XElement canvas, double x, double y, DesignedStage stage)
    {
        Path(canvas, $"M{Figure.Short(x)} {Figure.Short(y)}H{Figure.Short(x + 22)}M{Figure.Short(x + 82)} {Figure.Short(y)}H{Figure.Short(x + Cell)}");
        canvas.Add(Figure.Element("rect", ("x", Figure.Short(x + 22)), ("y", Figure.Short(y - 9)), ("width", 60), ("height", 18), ("fill", "#fff"), ("stroke", "#000"), ("stroke-width", 1.6)));
        Path(canvas, $"M{Figure.Short(x + 10)} {Figure.Short(y)}V{Figure.Short(y - 32)}H{Figure.Short(x + 37)}M{Figure.Short(x + 67)} {Figure.Short(y - 32)}H{Figure.Short(x + 94)}V{Figure.Short(y)}");
        Contact(canvas, x + 37, y - 32);
        Dot(canvas, x + 10, y);
        Dot(canvas, x + 94, y);
        Say(canvas, x + 52, y - 42, stage.Stage.ToString(CultureInfo.InvariantCulture), "middle");
        Say(canvas, x + 52, y + 27, Quantity.Ohms(stage.SectionOhms), "middle");
    }

    private static void AddArmature(XElement canvas, double x, double y, double ohms)
    {
        Path(canvas, $"M{Figure.Short(x)} {Figure.Short(y)}H{Figure.Short(x + 28)}M{Figure.Short(x + 72)} {Figure.Short(y)}H{Figure.Short(x + 92)}");
        Circle(canvas, x + 50, y, 22);
        Circle(canvas, x + 96, y, 4);
        Say(canvas, x + 50, y + 5, "M", "middle");
        Say(canvas, x + 18, y - 8, "A1", "middle");
        Say(canvas, x + 82, y - 8, "A2", "middle");
        Say(canvas, x + 97, y + 20, "−", "middle");
        Say(canvas, x + 50, y + 42, Quantity.Ohms(ohms), "middle");
    }

    // The main contact of a contactor, 30 wide: IEC 60617, from memory.
    private static void Contact(XElement canvas, double x, double y) =>
        Path(canvas, $"M{Figure.Short(x)} {Figure.Short(y)}A4 4 0 0 1 {Figure.Short(x - 8)} {Figure.Short(y)}M{Figure.Short(x + 30)} {Figure.Short(y)}H{Figure.Short(x + 24)}L{Figure.Short(x + 3)} {Figure.Short(y + 11)}");

    private static void Path(XElement canvas, string data) =>
        canvas.Add(Figure.Element("path", ("d", data), ("fill", "none"), ("stroke", "#000"), ("stroke-width", 1.6)));

    private static void Circle(XElement canvas, double x, double y, double radius) =>
        canvas.Add(Figure.Element("circle", ("cx", Figure.Short(x)), ("cy", Figure.Short(y)), ("r", radius), ("fill", "#fff"), ("stroke", "#000"), ("stroke-width", 1.6)));

    private static void Dot(XElement canvas, double x, double y) =>
        canvas.Add(Figure.Element("circle", ("cx", Figure.Short(x)), ("cy", Figure.Short(y)), ("r", 2.6), ("fill", "#000")));

    private static void Say(XElement canvas, double x, double y, string words, string anchor)
    {
        XElement text = Figure.Element("text", ("x", Figure.Short(x)), ("y", Figure.Short(y)), ("text-anchor", anchor), ("font-size", 13));
        text.Value = words;
        canvas.Add(text);
    }
}
