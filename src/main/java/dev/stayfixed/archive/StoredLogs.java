package dev.stayfixed.archive;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.UUID;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The bytes of logs, in pieces; plain text is packed. Writes need the running transaction. */
@Component
class StoredLogs {

    private static final int PIECE = 256 << 10;

    private final JdbcClient jdbc;

    StoredLogs(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void save(UUID submissionId, UploadedLog log, String mediaType) {
        log.read(in -> {
            try (OutputStream pieces = new BufferedOutputStream(new Pieces(submissionId), PIECE)) {
                if (mediaType.equals(UploadedLog.CSV)) {
                    GZIPOutputStream packed = new GZIPOutputStream(pieces, 1 << 13);
                    in.transferTo(packed);
                    packed.finish();
                } else {
                    in.transferTo(pieces);
                }
            }
            return true;
        });
    }

    /** The log as it was sent, read piece by piece. */
    UploadedLog open(UUID submissionId, String mediaType) {
        return new UploadedLog(() -> {
            InputStream stored = new Joined(submissionId);
            return mediaType.equals(UploadedLog.CSV) ? new GZIPInputStream(stored, 1 << 13) : stored;
        });
    }

    private final class Pieces extends OutputStream {

        private final UUID submissionId;
        private int position;

        Pieces(UUID submissionId) {
            this.submissionId = submissionId;
        }

        @Override
        public void write(int b) {
            write(new byte[] {(byte) b}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int length) {
            for (int at = from; at < from + length; at += PIECE) {
                jdbc.sql("insert into submission_part (submission_id, position, content) values (?, ?, ?)")
                        .params(
                                submissionId,
                                position++,
                                Arrays.copyOfRange(bytes, at, Math.min(at + PIECE, from + length)))
                        .update();
            }
        }
    }

    private final class Joined extends InputStream {

        private final UUID submissionId;
        private byte[] piece = new byte[0];
        private int at;
        private int position;

        Joined(UUID submissionId) {
            this.submissionId = submissionId;
        }

        @Override
        public int read() throws IOException {
            return isAtEnd() ? -1 : piece[at++] & 0xFF;
        }

        @Override
        public int read(byte[] target, int from, int length) throws IOException {
            if (isAtEnd()) {
                return -1;
            }
            int count = Math.min(length, piece.length - at);
            System.arraycopy(piece, at, target, from, count);
            at += count;
            return count;
        }

        private boolean isAtEnd() {
            if (at == piece.length) {
                piece = jdbc.sql("select content from submission_part where submission_id = ? and position = ?")
                        .params(submissionId, position++)
                        .query((row, n) -> row.getBytes(1))
                        .optional()
                        .orElse(new byte[0]);
                at = 0;
            }
            return piece.length == 0;
        }
    }
}
