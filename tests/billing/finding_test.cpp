#include "billing/finding.hpp"

#include <doctest/doctest.h>

namespace finding_test {

using namespace sparewell;
using namespace sparewell::billing;

TEST_CASE("every finding belongs to a book and has a word") {
  CHECK(book_of(FindingKind::issued_not_billed) == Book::claims);
  CHECK(book_of(FindingKind::no_proof_of_delivery) == Book::claims);
  CHECK(book_of(FindingKind::not_answered) == Book::payments);
  CHECK(book_of(FindingKind::paid_without_claim) == Book::payments);
  CHECK(book_of(FindingKind::received_not_invoiced) == Book::suppliers);
  CHECK(finding_word(FindingKind::issued_not_billed) == "issued, not billed");
  CHECK(finding_word(FindingKind::warranty_due) == "warranty credit due");
}

}  // namespace finding_test
