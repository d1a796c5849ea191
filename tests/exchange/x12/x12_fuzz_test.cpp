// Damaged files are read or refused, never crashed on, and every segment is accounted for.
#include <random>

#include <doctest/doctest.h>

#include "exchange/x12/claims_837.hpp"
#include "exchange/x12/remittance_835.hpp"
#include "x12_made.hpp"

namespace x12_fuzz_test {

using namespace sparewell;
using namespace sparewell::exchange;
using namespace sparewell::exchange::testing;

namespace {

const Currency usd{"USD"};

std::string mutated(std::string bytes, std::mt19937& random, int changes) {
  // Bytes that matter for the structure come often.
  static constexpr std::string_view signs{"*:~^\n\0 -.9AZ\xE9", 13};
  for (int i = 0; i < changes; ++i) {
    const auto at = random() % bytes.size();
    switch (random() % 4) {
      case 0:
        bytes[at] = signs[random() % signs.size()];
        break;
      case 1:
        bytes.erase(at, random() % 8);
        break;
      case 2:
        bytes[at] = static_cast<char>(random() % 256);
        break;
      default:
        bytes.insert(at, bytes.substr(random() % bytes.size(), random() % 60));
    }
    if (bytes.empty()) bytes = "x";
  }
  return bytes;
}

void check_balance(const PaymentRead& payment) {
  std::int64_t paid = 0;
  for (const auto& row : payment.lines) {
    auto left = row.line.charge.minor - row.line.paid.minor;
    for (const auto& text : row.line.adjustments) {
      const auto adjustment = parse_adjustment(text, row.line.paid.currency);
      REQUIRE(adjustment);
      left -= adjustment->amount.minor;
    }
    CHECK(left == 0);
    paid += row.line.paid.minor;
  }
  CHECK(paid == payment.summed.minor);
}

/// True when it was read.
bool survives(const std::string& bytes) {
  auto claims = read_x12("file", bytes);
  if (!claims) {
    CHECK(claims.error().sentence.starts_with("file "));
    return false;
  }
  auto payments = *claims;
  const auto rows = read_claims_837(*claims, usd).rows;
  CHECK(claims->reading.read + static_cast<int>(claims->reading.unread.size()) ==
        claims->reading.segments);
  for (const auto& row : rows) {
    ClaimLine line;
    static_cast<void>(read_claim_row(row, usd, line));
  }
  for (const auto& payment : read_payments_835(payments, usd)) check_balance(payment);
  CHECK(payments.reading.read + static_cast<int>(payments.reading.unread.size()) ==
        payments.reading.segments);
  for (const auto& unread : payments.reading.unread) {
    CHECK(unread.text.find("Samplename") == std::string::npos);
    CHECK_FALSE(unread.reason.empty());
  }
  return true;
}

}  // namespace

TEST_CASE("A file that is cut off anywhere is read as far as it goes") {
  const auto bytes = x12_made({small_claims(), sample_payment()}).text;
  for (std::size_t length = 0; length < bytes.size(); length += 3) {
    CAPTURE(length);
    CHECK(survives(bytes.substr(0, length)) == (length > 106));
  }
}

TEST_CASE("Files with changed bytes are read or refused, and no segment is lost") {
  const auto bytes = x12_made({small_claims(), sample_payment(), sample_payment()}).text;
  std::mt19937 random{20261125};
  int read = 0;
  for (int i = 0; i < 4000; ++i) {
    CAPTURE(i);
    read += survives(mutated(bytes, random, 1 + i % 12)) ? 1 : 0;
  }
  CHECK(read > 3000);
}

}  // namespace x12_fuzz_test
