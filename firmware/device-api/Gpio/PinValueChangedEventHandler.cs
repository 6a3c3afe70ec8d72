namespace System.Device.Gpio;

/// <summary>Is called when a pin has changed.</summary>
public delegate void PinValueChangedEventHandler(object sender, PinValueChangedEventArgs e);
