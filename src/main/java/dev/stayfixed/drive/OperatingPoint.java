package dev.stayfixed.drive;

/**
 * Where an engine ran at one moment: the stored conditions of a freeze frame, or a moment of a drive held against them.
 *
 * @param engineSpeed rpm
 * @param load calculated load (SAE J1979 PID $04), per cent
 * @param coolant °C
 */
public record OperatingPoint(double engineSpeed, double load, double coolant) {

    public OperatingPoint {
        if (!(engineSpeed >= 0 && engineSpeed <= 16_384)) {
            throw new IllegalArgumentException("engine speed: found " + engineSpeed + ", expected 0 to 16384 rpm");
        }
        if (!(load >= 0 && load <= 100)) {
            throw new IllegalArgumentException("load: found " + load + ", expected 0 to 100 %");
        }
        if (!(coolant >= -50 && coolant <= 215)) {
            throw new IllegalArgumentException("coolant: found " + coolant + ", expected -50 to 215 °C");
        }
    }
}
