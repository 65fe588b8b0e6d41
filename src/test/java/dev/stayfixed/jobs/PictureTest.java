package dev.stayfixed.jobs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.GpsDirectory;
import dev.stayfixed.platform.problem.Refused;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PictureTest {

    private static final int LONG = 400;
    private static final int SHORT = 240;

    /** Red at the upper left, green at the upper right, blue at the lower left, white at the lower right, as it was seen. */
    private static BufferedImage seen(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = image.createGraphics();
        Color[] corners = {Color.RED, Color.GREEN, Color.BLUE, Color.WHITE};
        for (int i = 0; i < corners.length; i++) {
            pen.setColor(corners[i]);
            pen.fillRect(i % 2 * width / 2, i / 2 * height / 2, width / 2, height / 2);
        }
        pen.dispose();
        return image;
    }

    /** How a camera stores what was seen: Exif 2.3, table of tag 274, by where its row 0 and column 0 are seen. */
    private static BufferedImage stored(BufferedImage seen, int turns) {
        boolean lying = turns >= 5;
        int width = lying ? seen.getHeight() : seen.getWidth();
        int height = lying ? seen.getWidth() : seen.getHeight();
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int row = 0; row < height; row++) {
            for (int column = 0; column < width; column++) {
                // Row 0 is seen at the top (1, 2), the bottom (3, 4), the left (5, 8) or the right (6, 7); column 0
                // likewise.
                int down = row;
                int right = column;
                int x = switch (turns) {
                    case 1, 4 -> right;
                    case 2, 3 -> width - 1 - right;
                    case 5, 8 -> down;
                    default -> height - 1 - down;
                };
                int y = switch (turns) {
                    case 1, 2 -> down;
                    case 3, 4 -> height - 1 - down;
                    case 5, 6 -> right;
                    default -> width - 1 - right;
                };
                image.setRGB(column, row, seen.getRGB(x, y));
            }
        }
        return image;
    }

    private static byte[] file(BufferedImage image, String format) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(image, format, bytes);
        return bytes.toByteArray();
    }

    /** A JPEG with an Exif segment behind its start: the orientation, a maker's name and a place. */
    private static byte[] withExif(byte[] jpeg, int turns) {
        byte[] maker = "Secret camera\0".getBytes(StandardCharsets.US_ASCII);
        ByteBuffer tiff = ByteBuffer.allocate(200);
        tiff.put("MM\0*".getBytes(StandardCharsets.US_ASCII)).putInt(8);
        tiff.putShort((short) 3);
        tiff.putShort((short) 0x010F).putShort((short) 2).putInt(maker.length).putInt(64);
        tiff.putShort((short) 0x0112)
                .putShort((short) 3)
                .putInt(1)
                .putShort((short) turns)
                .putShort((short) 0);
        tiff.putShort((short) 0x8825).putShort((short) 4).putInt(1).putInt(90);
        tiff.putInt(0);
        tiff.position(64).put(maker);
        tiff.position(90).putShort((short) 1);
        tiff.putShort((short) 0x0001).putShort((short) 2).putInt(2).put("N\0\0\0".getBytes(StandardCharsets.US_ASCII));
        tiff.putInt(0);
        byte[] exif = new byte[tiff.position()];
        tiff.flip().get(exif);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(jpeg, 0, 2);
        int length = 2 + 6 + exif.length;
        out.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xE1, (byte) (length >> 8), (byte) length});
        out.writeBytes("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
        out.writeBytes(exif);
        out.write(jpeg, 2, jpeg.length - 2);
        return out.toByteArray();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void however_the_camera_was_held_the_picture_stands_upright(int turns) throws Exception {
        byte[] photo = withExif(file(stored(seen(LONG, SHORT), turns), "jpeg"), turns);
        assertThat(ImageMetadataReader.readMetadata(new ByteArrayInputStream(photo))
                        .getFirstDirectoryOfType(ExifDirectoryBase.class))
                .isNotNull();
        Picture kept = Picture.of(photo);
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(kept.jpeg()));
        assertThat(new int[] {kept.width(), kept.height(), image.getWidth(), image.getHeight()})
                .containsExactly(LONG, SHORT, LONG, SHORT);
        assertThat(corner(image, 0.25, 0.25)).isEqualTo("red");
        assertThat(corner(image, 0.75, 0.25)).isEqualTo("green");
        assertThat(corner(image, 0.25, 0.75)).isEqualTo("blue");
        assertThat(corner(image, 0.75, 0.75)).isEqualTo("white");
    }

    private static String corner(BufferedImage image, double x, double y) {
        Color color = new Color(image.getRGB((int) (image.getWidth() * x), (int) (image.getHeight() * y)));
        boolean red = color.getRed() > 128;
        boolean green = color.getGreen() > 128;
        boolean blue = color.getBlue() > 128;
        return red && green && blue ? "white" : red ? "red" : green ? "green" : blue ? "blue" : "black";
    }

    @Test
    void nothing_is_kept_of_what_a_camera_writes_beside_the_picture() throws Exception {
        byte[] photo = withExif(file(seen(LONG, SHORT), "jpeg"), 1);
        assertThat(new String(photo, StandardCharsets.ISO_8859_1)).contains("Secret camera");
        byte[] kept = Picture.of(photo).jpeg();
        assertThat(new String(kept, StandardCharsets.ISO_8859_1)).doesNotContain("Secret camera", "Exif");
        var metadata = ImageMetadataReader.readMetadata(new ByteArrayInputStream(kept));
        assertThat(metadata.getDirectoriesOfType(ExifDirectoryBase.class)).isEmpty();
        assertThat(metadata.getDirectoriesOfType(GpsDirectory.class)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "4000, 3000, 1600, 1200",
        "3000, 4000, 1200, 1600",
        "1600, 10, 1600, 10",
        "5, 3, 5, 3",
        "4000, 1, 1600, 1"
    })
    void a_photo_is_kept_no_longer_than_a_report_needs(int width, int height, int kept, int high) throws IOException {
        Picture picture = Picture.of(file(seen(width, height), "png"));
        assertThat(new int[] {picture.width(), picture.height()}).containsExactly(kept, high);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | nothing",
                "GIF89a | a file of another kind",
                "xxxxftypheic | HEIC",
                "%PDF-1.7 | a file of another kind"
            })
    void what_is_no_photo_is_named(String file, String found) {
        assertThatThrownBy(() -> Picture.of(file.getBytes(StandardCharsets.ISO_8859_1)))
                .isInstanceOfSatisfying(Refused.class, refused -> {
                    assertThat(refused.mistakes()).singleElement().satisfies(mistake -> {
                        assertThat(mistake.path()).isEqualTo("file");
                        assertThat(mistake.found()).contains(found);
                        assertThat(mistake.expected()).contains("JPEG or PNG");
                    });
                });
    }

    @Test
    void a_picture_that_claims_more_pixels_than_a_phone_has_is_not_drawn() throws IOException {
        byte[] png = file(seen(4, 4), "png");
        ByteBuffer.wrap(png).putInt(16, 30_000).putInt(20, 30_000);
        assertThatThrownBy(() -> Picture.of(png)).isInstanceOf(Refused.class);
    }

    @Test
    void broken_files_are_refused_and_nothing_else_happens() throws IOException {
        byte[] jpeg = withExif(file(seen(LONG, SHORT), "jpeg"), 6);
        byte[] png = file(seen(40, 30), "png");
        Random random = new Random(7);
        int refused = 0;
        for (int n = 0; n < 400; n++) {
            byte[] broken = (n % 2 == 0 ? jpeg : png).clone();
            for (int hit = 0; hit < 1 + n % 9; hit++) {
                broken[random.nextInt(Math.min(broken.length, n % 3 == 0 ? 80 : broken.length))] =
                        (byte) random.nextInt(256);
            }
            try {
                assertThat(Picture.of(broken).jpeg()).isNotEmpty();
            } catch (Refused expected) {
                refused++;
            }
        }
        assertThat(refused).isPositive();
    }
}
