package dev.stayfixed.jobs;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.MetadataException;
import com.drew.metadata.exif.ExifIFD0Directory;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.Set;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.ImageOutputStream;

/**
 * A photo as it is kept: drawn anew, upright and no larger than a report needs, as a JPEG that holds nothing but the picture. Where it was
 * taken, when and by which phone stays with whoever took it.
 *
 * @param width in pixels
 * @param height in pixels
 */
@SuppressWarnings("ArrayRecordComponent") // never compared, and passed on at once
record Picture(byte[] jpeg, int width, int height) {

    /** Bytes of a file, as phones make them. */
    static final int LARGEST_FILE = 12 * 1024 * 1024;

    /** Pixels; what claims more is no photo of a phone, and would take the memory of this machine. */
    private static final long MOST_PIXELS = 60_000_000;

    /** Pixels along the longer side. */
    private static final int LONGEST = 1600;

    private static final float QUALITY = 0.82f;
    private static final String EXPECTED = "a photo as JPEG or PNG of at most 12 MB";

    /** @throws Refused at the path "file", where it is no photo that can be read */
    static Picture of(byte[] file) {
        if (file.length > LARGEST_FILE) {
            throw wrong(file.length + " bytes");
        }
        try {
            return drawn(decoded(file), turns(file));
        } catch (Refused refused) {
            throw refused;
        } catch (IOException | RuntimeException unreadable) {
            // A decoder meets whatever somebody sends.
            throw wrong(kind(file) + ", which cannot be read");
        }
    }

    private static BufferedImage decoded(byte[] file) throws IOException {
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(file))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                throw wrong(kind(file));
            }
            ImageReader reader = readers.next();
            try {
                if (!Set.of("JPEG", "png").contains(reader.getFormatName())) {
                    throw wrong(kind(file));
                }
                reader.setInput(in, true, true);
                long pixels = (long) reader.getWidth(0) * reader.getHeight(0);
                if (pixels > MOST_PIXELS) {
                    throw wrong(reader.getWidth(0) + " x " + reader.getHeight(0) + " pixels");
                }
                return reader.read(0);
            } finally {
                reader.dispose();
            }
        }
    }

    /** How the camera was held, as Exif 2.3 numbers it: 1 for upright. */
    private static int turns(byte[] file) throws IOException {
        try {
            ExifIFD0Directory exif = ImageMetadataReader.readMetadata(new ByteArrayInputStream(file))
                    .getFirstDirectoryOfType(ExifIFD0Directory.class);
            return exif != null && exif.containsTag(ExifIFD0Directory.TAG_ORIENTATION)
                    ? exif.getInt(ExifIFD0Directory.TAG_ORIENTATION)
                    : 1;
        } catch (ImageProcessingException | MetadataException none) {
            return 1;
        }
    }

    private static Picture drawn(BufferedImage photo, int turns) throws IOException {
        boolean lying = turns >= 5 && turns <= 8;
        double scale = Math.min(1, (double) LONGEST / Math.max(photo.getWidth(), photo.getHeight()));
        int across = Math.max(1, (int) Math.round(photo.getWidth() * scale));
        int down = Math.max(1, (int) Math.round(photo.getHeight() * scale));
        int width = lying ? down : across;
        int height = lying ? across : down;
        BufferedImage upright = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = upright.createGraphics();
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, width, height);
        pen.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        pen.setRenderingHint(RenderingHints.KEY_RENDERING, RenderingHints.VALUE_RENDER_QUALITY);
        AffineTransform place = upright(turns, width, height);
        place.scale((double) across / photo.getWidth(), (double) down / photo.getHeight());
        pen.drawImage(photo, place, null);
        pen.dispose();
        return new Picture(encoded(upright), width, height);
    }

    /** Exif 2.3, section 4.6.4, tag 274: from how the rows and columns lie to how they are seen. */
    private static AffineTransform upright(int turns, int width, int height) {
        return switch (turns) {
            case 2 -> new AffineTransform(-1, 0, 0, 1, width, 0);
            case 3 -> new AffineTransform(-1, 0, 0, -1, width, height);
            case 4 -> new AffineTransform(1, 0, 0, -1, 0, height);
            case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
            case 6 -> new AffineTransform(0, 1, -1, 0, width, 0);
            case 7 -> new AffineTransform(0, -1, -1, 0, width, height);
            case 8 -> new AffineTransform(0, -1, 1, 0, 0, height);
            default -> new AffineTransform();
        };
    }

    private static byte[] encoded(BufferedImage picture) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
            ImageWriteParam quality = writer.getDefaultWriteParam();
            quality.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            quality.setCompressionQuality(QUALITY);
            writer.setOutput(out);
            writer.write(null, new IIOImage(picture, null, null), quality);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    private static Refused wrong(String found) {
        return Refused.content(new Mistake("file", found, EXPECTED));
    }

    /** What somebody sent, as far as its first bytes tell. */
    private static String kind(byte[] file) {
        String start = new String(file, 0, Math.min(file.length, 12), StandardCharsets.ISO_8859_1);
        if (start.isEmpty()) {
            return "nothing";
        }
        if (start.matches("(?s).{4}ftyp(heic|heix|mif1|hevc)")) {
            return "HEIC, as some phones save photos until they are told to be compatible";
        }
        if (start.startsWith("\u00FF\u00D8")) {
            return "JPEG";
        }
        if (start.startsWith("\u0089PNG")) {
            return "PNG";
        }
        return "a file of another kind";
    }
}
