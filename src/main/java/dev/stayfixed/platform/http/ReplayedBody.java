package dev.stayfixed.platform.http;

import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletInputStream;
import java.io.IOException;
import java.io.InputStream;

/** A body that was taken in whole, read from the beginning. */
final class ReplayedBody extends ServletInputStream {

    private final InputStream body;
    private boolean finished;

    ReplayedBody(InputStream body) {
        this.body = body;
    }

    @Override
    public int read() throws IOException {
        int next = body.read();
        finished |= next < 0;
        return next;
    }

    @Override
    public int read(byte[] target, int from, int length) throws IOException {
        int count = body.read(target, from, length);
        finished |= count < 0;
        return count;
    }

    @Override
    public void close() throws IOException {
        body.close();
    }

    @Override
    public boolean isFinished() {
        return finished;
    }

    @Override
    public boolean isReady() {
        return true;
    }

    @Override
    public void setReadListener(ReadListener listener) {
        throw new UnsupportedOperationException("bodies are read at once");
    }
}
