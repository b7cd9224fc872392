// A server on a free port of this computer that takes connections and never says a word.
#pragma once

#include <arpa/inet.h>
#include <gtest/gtest.h>
#include <netinet/in.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include "core/exchange/mail.h"

namespace fettle {

class SilentServer {
  public:
    SilentServer() : socket_(::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0)) {
        sockaddr_in here{};
        here.sin_family = AF_INET;
        here.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
        socklen_t size = sizeof here;
        EXPECT_EQ(::bind(socket_, reinterpret_cast<sockaddr*>(&here), size), 0);
        EXPECT_EQ(::listen(socket_, 4), 0);
        EXPECT_EQ(::getsockname(socket_, reinterpret_cast<sockaddr*>(&here), &size), 0);
        port_ = ntohs(here.sin_port);
    }
    ~SilentServer() { ::close(socket_); }
    SilentServer(const SilentServer&) = delete;
    SilentServer& operator=(const SilentServer&) = delete;

    // Whether somebody has come within half a minute.
    bool called() const {
        pollfd look{socket_, POLLIN, 0};
        return ::poll(&look, 1, 30000) == 1;
    }
    int port() const { return port_; }
    MailServer settings() const {
        MailServer server;
        server.host = "127.0.0.1";
        server.port = port_;
        server.timeoutS = 600;
        return server;
    }

  private:
    int socket_, port_ = 0;
};

}  // namespace fettle
