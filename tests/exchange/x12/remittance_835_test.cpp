#include "exchange/x12/remittance_835.hpp"

#include <algorithm>
#include <numeric>

#include <doctest/doctest.h>

#include "x12_made.hpp"

namespace remittance_835_test {

using namespace sparewell;
using namespace sparewell::exchange;
using namespace sparewell::exchange::testing;

namespace {

const Currency usd{"USD"};

struct Result {
  X12File file;
  std::vector<PaymentRead> payments;
};

Result read(const MadeTransaction& transaction) {
  auto file = *read_x12("paid.835", x12_made({transaction}).text);
  auto payments = read_payments_835(file, usd);
  REQUIRE(payments.size() == 1);
  return {std::move(file), std::move(payments)};
}

/// charge - adjustments = paid holds for every line.
void check_lines(const PaymentRead& payment) {
  std::int64_t paid = 0;
  for (const auto& [at, line, person] : payment.lines) {
    CAPTURE(at);
    auto left = line.charge.minor;
    for (const auto& text : line.adjustments) {
      const auto adjustment = parse_adjustment(text, usd);
      REQUIRE(adjustment);
      left -= adjustment->amount.minor;
    }
    CHECK(left == line.paid.minor);
    paid += line.paid.minor;
  }
  CHECK(paid == payment.summed.minor);
}

void put(MadeTransaction& transaction, std::string_view start,
         const std::vector<std::string>& instead) {
  auto& segments = transaction.segments;
  auto at = std::ranges::find_if(segments, [&](const auto& s) { return s.starts_with(start); });
  REQUIRE(at != segments.end());
  at = segments.erase(at);
  segments.insert(at, instead.begin(), instead.end());
}

}  // namespace

// Both claims of the public sample: 56.70 - 0.18 = 56.52 with 6 units, and 25.95 - 25.95 - 0 = 0.
TEST_CASE("The public sample balances and is read whole") {
  const auto [file, payments] = read(sample_payment());
  const auto& payment = payments[0];
  CHECK(payment.fault.empty());
  CHECK(payment.remittance.payer == "Northfield Health");
  CHECK(payment.remittance.reference == "PAY-1");
  CHECK(payment.remittance.paid_on == make_date(2011, 3, 1));
  CHECK(payment.remittance.total == Money{5652, usd});
  CHECK(payment.summed == Money{5652, usd});
  REQUIRE(payment.lines.size() == 2);
  const auto& first = payment.lines[0].line;
  CHECK(first.claim_ref == "444444");
  CHECK(first.status == "1");
  CHECK(first.payer_claim == "PC-1");
  CHECK(first.code == "H0005");
  CHECK(first.modifiers == std::vector<std::string>{"HF", "H9"});
  CHECK(first.quantity == 6);
  CHECK(first.service_date == make_date(2011, 2, 5));
  CHECK(first.adjustments == std::vector<std::string>{"CO:42:0.18:0"});
  CHECK(first.line_control == "444444");
  CHECK(payment.lines[0].person.member_id == "M-1001");
  const auto& second = payment.lines[1].line;
  CHECK(second.status == "4");
  CHECK(second.paid == Money{0, usd});
  CHECK(second.adjustments == std::vector<std::string>{"CR:18:25.95:0", "CO:42:0.00:0"});
  CHECK(second.position == 2);
  check_lines(payment);
  CHECK(file.reading.differences.empty());
  CHECK(file.reading.unread.empty());
  CHECK(file.reading.read == file.reading.segments);
}

// Balancing rules from memory of the implementation guide, consistent with the public sample.
TEST_CASE("A claim's own adjustments are an entry of their own, and nothing counts twice") {
  auto transaction = sample_payment();
  put(transaction, "CLP*444444", {"CLP*444444*1*56.70*50.52*6*MC*PC-1", "CAS*PR*1*5.00**3*1"});
  put(transaction, "BPR*", {"BPR*I*50.52*C*ACH*CCP*01*1*DA*1*1**01*1*DA*1*20110301"});
  const auto [file, payments] = read(transaction);
  const auto& payment = payments[0];
  REQUIRE(payment.lines.size() == 3);
  const auto& whole = payment.lines[1].line;
  CHECK(whole.entry == RemittanceEntry::claim);
  CHECK(whole.charge == Money{0, usd});
  CHECK(whole.paid == Money{-600, usd});
  CHECK(whole.adjustments == std::vector<std::string>{"PR:1:5.00", "PR:3:1.00"});
  CHECK(payment.summed == payment.remittance.total);
  check_lines(payment);
  CHECK(file.reading.differences.empty());
}

TEST_CASE("A claim without service lines is one entry") {
  auto transaction = sample_payment();
  transaction.segments.resize(6);
  transaction.segments.insert(transaction.segments.end(),
                              {"CLP*CL-7*1*100*80*20*12*PC-7", "CAS*PR*2*20", "DTM*232*20110201"});
  put(transaction, "BPR*", {"BPR*I*80*C*ACH*CCP*01*1*DA*1*1**01*1*DA*1*20110301"});
  const auto [file, payments] = read(transaction);
  REQUIRE(payments[0].lines.size() == 1);
  const auto& line = payments[0].lines[0].line;
  CHECK(line.entry == RemittanceEntry::claim);
  CHECK(line.charge == Money{10000, usd});
  CHECK(line.paid == Money{8000, usd});
  CHECK(line.service_date == make_date(2011, 2, 1));
  check_lines(payments[0]);
  CHECK(file.reading.differences.empty());
}

TEST_CASE("What the payer keeps for itself is an entry without a claim") {
  auto transaction = sample_payment();
  transaction.segments.push_back("PLB*1234567893*20111231*WO:PC-9*16.52*72*-10");
  put(transaction, "BPR*", {"BPR*I*50*C*ACH*CCP*01*1*DA*1*1**01*1*DA*1*20110301"});
  const auto [file, payments] = read(transaction);
  REQUIRE(payments[0].lines.size() == 4);
  const auto& kept = payments[0].lines[2].line;
  CHECK(kept.entry == RemittanceEntry::provider);
  CHECK(kept.payer_claim == "PC-9");
  CHECK(kept.paid == Money{-1652, usd});
  CHECK(kept.adjustments == std::vector<std::string>{"PLB:WO:16.52"});
  CHECK(payments[0].lines[3].line.paid == Money{1000, usd});
  CHECK(payments[0].summed == payments[0].remittance.total);
  check_lines(payments[0]);
  CHECK(file.reading.differences.empty());
}

TEST_CASE("Sums that do not balance are said, and kept as adjustments without a reason") {
  auto transaction = sample_payment();
  put(transaction, "CAS*CO*42*0.18*0", {"CAS*CO*42*0.10*0"});
  put(transaction, "BPR*", {"BPR*I*60*C*ACH*CCP*01*1*DA*1*1**01*1*DA*1*20110301"});
  const auto [file, payments] = read(transaction);
  CHECK(file.reading.differences.size() == 2);  // the line, and the payment's total
  CHECK(payments[0].lines[0].line.adjustments ==
        std::vector<std::string>{"CO:42:0.10:0", "OA:unstated:0.08"});
  check_lines(payments[0]);
}

TEST_CASE("A line that cannot be read leaves its sum with the claim") {
  auto transaction = sample_payment();
  put(transaction, "SVC*HC:H0005", {"SVC*HC:H0005:HF:H9*56x*56.52**6", "XYZ*1"});
  const auto [file, payments] = read(transaction);
  CHECK(file.reading.unread.size() == 2);
  CHECK(file.reading.read + 2 == file.reading.segments);
  CHECK(payments[0].summed == Money{5652, usd});
  check_lines(payments[0]);
}

TEST_CASE("The code that was billed is kept where the payer paid another") {
  auto transaction = sample_payment();
  put(transaction, "SVC*HC:H0005", {"SVC*HC:L5679:RT*56.70*56.52**6*HC:L5673:RT*2"});
  const auto [file, payments] = read(transaction);
  CHECK(payments[0].lines[0].line.code == "L5673");
  CHECK(payments[0].lines[0].line.side == Side::right);
  REQUIRE(file.reading.notes.size() == 1);
  CHECK(file.reading.notes[0].find("L5673 was billed and paid as L5679") != std::string::npos);
}

TEST_CASE("A payment without payer, reference or day has a fault") {
  for (const auto* start : {"TRN*", "N1*PR"}) {
    auto transaction = sample_payment();
    put(transaction, start, {});
    CHECK_FALSE(read(transaction).payments[0].fault.empty());
  }
  auto transaction = sample_payment();
  put(transaction, "BPR*", {"BPR*I*56.52*C*CHK"});
  CHECK(read(transaction).payments[0].remittance.paid_on == make_date(2011, 2, 28));
}

}  // namespace remittance_835_test
