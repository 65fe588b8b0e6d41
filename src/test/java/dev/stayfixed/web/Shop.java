package dev.stayfixed.web;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;

/** What a technician does, in the words of the trade. */
public final class Shop {

    /** Catalyst monitor complete in this driving cycle, no pending and no confirmed code. SAE J1979 $01 PID $41, $07, $03. */
    public static final String RAN_CLEAN = "41 41 00 07 65 00\\n47 00\\n43 00";

    /** Every monitor still incomplete in this driving cycle. */
    public static final String DID_NOT_RUN = "41 41 00 07 65 65\\n47 00\\n43 00";

    /** Catalyst monitor complete in this driving cycle, and P0420 pending. */
    public static final String RAN_AND_FAILED = "41 41 00 07 65 00\\n47 01 04 20\\n43 00";

    /** The same on the next trip: the control unit confirms the code. */
    public static final String RAN_AND_CONFIRMED = "41 41 00 07 65 00\\n47 01 04 20\\n43 01 04 20";

    private static final String API = "/api/v1";

    private final Client client;

    public Shop(Client client) {
        this.client = client;
    }

    public Answer vehicle(String description) {
        return client.post(API + "/vehicles", "{\"description\":\"%s\"}".formatted(description))
                .is(201);
    }

    public Answer job(Answer vehicle, String faults) {
        return client.post(API + "/jobs", "{\"vehicleId\":\"%s\",\"faults\":[%s]}".formatted(vehicle.id(), faults))
                .is(201);
    }

    public Answer job(Answer vehicle) {
        return job(vehicle, "{\"code\":\"P0420\"}");
    }

    public Answer repair(Answer job, String performedAt) {
        return client.post(
                        API + "/jobs/" + job.id() + "/repairs",
                        "{\"performedAt\":\"%s\",\"description\":\"catalyst replaced\",\"codesCleared\":true}"
                                .formatted(performedAt))
                .is(201);
    }

    /**
     * Sends a photo of a repair.
     *
     * @param photos the address of its photos
     */
    public Answer photo(String photos, byte[] file, String caption) {
        String boundary = "between-the-parts";
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        body.writeBytes(("--" + boundary + "\r\nContent-Disposition: form-data; name=\"caption\"\r\n\r\n" + caption
                        + "\r\n--"
                        + boundary + "\r\nContent-Disposition: form-data; name=\"file\"; filename=\"meter.png\"\r\n"
                        + "Content-Type: image/png\r\n\r\n")
                .getBytes(StandardCharsets.UTF_8));
        body.writeBytes(file);
        body.writeBytes(("\r\n--" + boundary + "--\r\n").getBytes(StandardCharsets.US_ASCII));
        return client.send("POST", photos, "multipart/form-data; boundary=" + boundary, body.toByteArray());
    }

    /** A small picture as PNG, of one shade of red, green and blue. */
    public static byte[] picture(int shade) {
        BufferedImage image = new BufferedImage(60, 40, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                image.setRGB(x, y, shade);
            }
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    public Answer drive(Answer vehicle, String start, String scan) {
        return client.post(API + "/vehicles/" + vehicle.id() + "/drives", body(start, scan));
    }

    public Answer correct(Answer drive, String start, String scan) {
        return client.put(API + "/drives/" + drive.id(), body(start, scan), "If-Match", drive.etag());
    }

    public static String body(String start, String scan) {
        return "{\"start\":\"%s\",\"summary\":{\"runTime\":1800},\"scans\":[{\"text\":\"%s\"}]}".formatted(start, scan);
    }

    public Answer see(Answer job) {
        return client.get(API + "/jobs/" + job.id()).is(200);
    }

    public Answer verdicts(Answer job) {
        return client.get(API + "/jobs/" + job.id() + "/verdicts").is(200);
    }

    /** Where the job's only fault stands, in words. */
    public String standing(Answer job) {
        return see(job).at("/faults/0/standing/words");
    }

    public Answer close(Answer job, String body) {
        return client.post(API + "/jobs/" + job.id() + "/close", body, "If-Match", see(job).etag());
    }
}
