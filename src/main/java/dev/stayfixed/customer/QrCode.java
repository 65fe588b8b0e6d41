package dev.stayfixed.customer;

/**
 * A QR code (ISO/IEC 18004) as one path of unit squares, with the quiet zone of four modules around it.
 *
 * @param size modules from edge to edge, quiet zone included
 * @param path data of an SVG path
 */
public record QrCode(int size, String path) {

    private static final int QUIET = 4;

    /** Error correction level M: still read with a seventh of it soiled, as sheets in cars are. */
    public static QrCode of(String text) {
        io.nayuki.qrcodegen.QrCode code =
                io.nayuki.qrcodegen.QrCode.encodeText(text, io.nayuki.qrcodegen.QrCode.Ecc.MEDIUM);
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < code.size; y++) {
            for (int x = 0; x < code.size; x++) {
                if (code.getModule(x, y)) {
                    path.append('M')
                            .append(x + QUIET)
                            .append(' ')
                            .append(y + QUIET)
                            .append("h1v1h-1z");
                }
            }
        }
        return new QrCode(code.size + 2 * QUIET, path.toString());
    }
}
