#!/usr/bin/python3
"""A real SMTP server (aiosmtpd) on a free port of this computer, for the tests of the alerts' mails.

mail_server.py FOLDER [--security starttls|tls|none] [--login USER:PASSWORD] [--rcpt ANSWER] [--data ANSWER] [--drop]
reads FOLDER/cert.pem and FOLDER/key.pem, writes its port to FOLDER/port, each message it took to FOLDER/N.eml with the
envelope in its first lines. Ends with its standard input.
"""
import argparse
import asyncio
import os
import ssl
import sys

from aiosmtpd.smtp import SMTP, AuthResult


class Kept:
    def __init__(self, options):
        self.options = options
        self.taken = 0

    async def handle_RCPT(self, server, session, envelope, address, rcpt_options):
        if self.options.rcpt:
            return self.options.rcpt
        envelope.rcpt_tos.append(address)
        return "250 OK"

    async def handle_DATA(self, server, session, envelope):
        if self.options.drop:
            server.transport.close()
            return "250 never said"
        if self.options.data:
            return self.options.data
        self.taken += 1
        path = os.path.join(self.options.folder, "%d.eml" % self.taken)
        with open(path + ".part", "wb") as out:
            head = "X-Envelope-From: %s\r\nX-Envelope-To: %s\r\nX-Encrypted: %s\r\n" % (
                envelope.mail_from, ",".join(envelope.rcpt_tos), "yes" if session.ssl else "no")
            out.write(head.encode() + envelope.original_content)
        os.rename(path + ".part", path)
        return "250 taken"


def authenticator(login):
    def check(server, session, envelope, mechanism, data):
        user, password = login.split(":", 1)
        good = data.login == user.encode() and data.password == password.encode()
        return AuthResult(success=good, handled=good)
    return check


async def main(options):
    context = ssl.create_default_context(ssl.Purpose.CLIENT_AUTH)
    context.load_cert_chain(os.path.join(options.folder, "cert.pem"), os.path.join(options.folder, "key.pem"))
    handler = Kept(options)
    starttls = options.security == "starttls"

    def serve():
        return SMTP(handler, hostname="localhost", tls_context=context if starttls else None,
                    require_starttls=starttls, auth_required=bool(options.login),
                    auth_require_tls=starttls,
                    authenticator=authenticator(options.login) if options.login else None)

    loop = asyncio.get_running_loop()
    server = await loop.create_server(serve, "127.0.0.1", 0, ssl=context if options.security == "tls" else None)
    path = os.path.join(options.folder, "port")
    with open(path + ".part", "w") as out:
        out.write(str(server.sockets[0].getsockname()[1]))
    os.rename(path + ".part", path)
    await loop.run_in_executor(None, sys.stdin.read)
    server.close()


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("folder")
    parser.add_argument("--security", default="starttls")
    parser.add_argument("--login", default="")
    parser.add_argument("--rcpt", default="")
    parser.add_argument("--data", default="")
    parser.add_argument("--drop", action="store_true")
    asyncio.run(main(parser.parse_args()))
