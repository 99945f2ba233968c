// SPDX-License-Identifier: Apache-2.0
#include "people/time_stamps.h"

#include <stdexcept>

#include "trust/identity_certificate.h"

namespace people {

LocalTimeStamps::LocalTimeStamps() {
    folder_.write("tsa.cnf",
                  "[tsa]\ndefault_tsa=one\n[one]\nserial=serial\ncrypto_device=builtin\n"
                  "signer_cert=tsa.crt\nsigner_key=tsa.key\nsigner_digest=sha256\n"
                  "default_policy=1.3.6.1.4.1.32473.1\ndigests=sha256,sha512\naccuracy=secs:1\n"
                  "ess_cert_id_chain=no\ness_cert_id_alg=sha256\ncerts=root.crt\n");
    folder_.write("extensions",
                  "extendedKeyUsage=critical,timeStamping\nkeyUsage=critical,digitalSignature\n"
                  "basicConstraints=CA:FALSE\n");
    folder_.write("serial", "01\n");
    const auto made = folder_.run(
        "openssl req -x509 -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes -keyout root.key "
        "-out root.crt -days 30 -subj '/O=Clock Tower/CN=Clock root' -addext "
        "keyUsage=critical,keyCertSign && openssl req -newkey rsa:3072 -nodes -keyout tsa.key -out "
        "tsa.csr -subj '/O=Clock Tower/CN=Tower clock' && openssl x509 -req -in tsa.csr -CA "
        "root.crt -CAkey root.key -CAcreateserial -days 20 -extfile extensions -out tsa.crt");
    if (made.code != 0) throw std::runtime_error(made.output);
}

model::Result<std::string> LocalTimeStamps::answer(const std::string& request) const {
    folder_.write("request", request);
    const auto replied = folder_.run(
        "openssl ts -reply -config tsa.cnf -section one -queryfile request -out answer");
    if (replied.code != 0) return model::refusal("", "%1", {replied.output});
    return folder_.read("answer");
}

model::Rfc3161Service LocalTimeStamps::service() const {
    return model::Rfc3161Service([this](const std::string& request) { return answer(request); });
}

std::string LocalTimeStamps::authority() const {
    const auto certificates = model::certificatesFromPem(folder_.read("root.crt"));
    if (!certificates) throw std::runtime_error(certificates.error().message());
    return certificates->front();
}

}  // namespace people
