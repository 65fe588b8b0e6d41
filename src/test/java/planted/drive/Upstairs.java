package planted.drive;

/** Something above obd. */
public class Upstairs {}
