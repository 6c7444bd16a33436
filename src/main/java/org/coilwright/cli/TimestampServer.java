package org.coilwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.HttpURLConnection;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.Optional;
import org.coilwright.pdf.TimeStamper;

/** A time stamp authority that is reached by HTTP, as RFC 3161 has it. Nothing else is sent. */
final class TimestampServer implements TimeStamper {
  private static final int PATIENCE_MS = 20_000;
  private static final int MOST_BYTES = 1 << 16;

  private final URI uri;

  private TimestampServer(URI uri) {
    this.uri = uri;
  }

  /** The server at an address; empty if that is none. */
  static Optional<TimestampServer> at(String address) {
    try {
      URI uri = new URI(address);
      boolean http = "http".equals(uri.getScheme()) || "https".equals(uri.getScheme());
      return http && uri.getHost() != null
          ? Optional.of(new TimestampServer(uri))
          : Optional.empty();
    } catch (URISyntaxException e) {
      return Optional.empty();
    }
  }

  @Override
  public byte[] answer(byte[] request) throws IOException {
    HttpURLConnection connection = (HttpURLConnection) uri.toURL().openConnection();
    try {
      connection.setConnectTimeout(PATIENCE_MS);
      connection.setReadTimeout(PATIENCE_MS);
      connection.setInstanceFollowRedirects(false);
      connection.setRequestMethod("POST");
      connection.setDoOutput(true);
      connection.setRequestProperty("Content-Type", "application/timestamp-query");
      connection.setFixedLengthStreamingMode(request.length);
      try (OutputStream out = connection.getOutputStream()) {
        out.write(request);
      }
      int status = connection.getResponseCode();
      if (status != HttpURLConnection.HTTP_OK) {
        throw new IOException("it answers with HTTP status " + status);
      }
      try (InputStream in = connection.getInputStream()) {
        byte[] answer = in.readNBytes(MOST_BYTES + 1);
        if (answer.length > MOST_BYTES) {
          throw new IOException("its answer is far larger than any time stamp");
        }
        return answer;
      }
    } finally {
      connection.disconnect();
    }
  }
}
