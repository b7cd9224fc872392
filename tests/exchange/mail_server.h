// A real mail server on a free port of this computer for the length of a test (mail_server.py, aiosmtpd),
// with a certificate of its own made by openssl. What it took lies in its folder.
#pragma once

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <thread>
#include <vector>

#include "core/exchange/mail.h"

namespace fettle {

class TestMailServer {
  public:
    explicit TestMailServer(const std::string& folder, std::vector<std::string> options = {},
                            const std::string& security = "starttls")
        : folder_(folder), security_(security) {
        std::filesystem::create_directories(folder_);
        makeCertificate(folder_, "cert", "key");
        options.insert(options.begin(),
                       {"/usr/bin/python3", FETTLE_SOURCE_DIR "/tests/exchange/mail_server.py", folder_,
                        "--security", security});
        start(options);
        for (int i = 0; i < 1500 && port() == 0; ++i)
            std::this_thread::sleep_for(std::chrono::milliseconds(20));
        EXPECT_NE(port(), 0) << "the mail server did not start: python3-aiosmtpd, see resources/setup/setup";
    }
    ~TestMailServer() {
        ::close(input_);
        ::waitpid(child_, nullptr, 0);
    }
    TestMailServer(const TestMailServer&) = delete;
    TestMailServer& operator=(const TestMailServer&) = delete;

    static void makeCertificate(const std::string& folder, const std::string& cert, const std::string& key) {
        const std::string made =
            "openssl req -x509 -newkey rsa:2048 -nodes -days 2 -subj /CN=localhost -addext "
            "subjectAltName=DNS:localhost,IP:127.0.0.1 -keyout '" +
            folder + "/" + key + ".pem' -out '" + folder + "/" + cert + ".pem' >/dev/null 2>&1";
        EXPECT_EQ(std::system(made.c_str()), 0) << "openssl made no certificate";
    }

    int port() const {
        int port = 0;
        std::ifstream(folder_ + "/port") >> port;
        return port;
    }
    std::string certificate() const { return folder_ + "/cert.pem"; }
    MailServer settings() const {
        MailServer server;
        server.host = "localhost";
        server.port = port();
        server.security = security_;
        server.caFile = certificate();
        server.timeoutS = 20;
        return server;
    }
    // Messages taken, in order, with the envelope before them.
    std::vector<std::string> taken() const {
        std::vector<std::string> all;
        for (int i = 1;; ++i) {
            std::ifstream in(folder_ + "/" + std::to_string(i) + ".eml", std::ios::binary);
            if (!in) return all;
            std::ostringstream text;
            text << in.rdbuf();
            all.push_back(text.str());
        }
    }

  private:
    void start(const std::vector<std::string>& words) {
        int ends[2] = {-1, -1};
        EXPECT_EQ(::pipe2(ends, O_CLOEXEC), 0);
        std::vector<char*> list;
        for (const std::string& word : words)
            list.push_back(const_cast<char*>(word.c_str()));
        list.push_back(nullptr);
        child_ = ::fork();
        if (child_ == 0) {
            ::dup2(ends[0], 0);
            ::dup2(::open((folder_ + "/log").c_str(), O_WRONLY | O_CREAT, 0600), 2);
            ::execv(list[0], list.data());
            ::_exit(127);
        }
        ::close(ends[0]);
        input_ = ends[1];
    }

    std::string folder_, security_;
    pid_t child_ = 0;
    int input_ = -1;
};

}  // namespace fettle
