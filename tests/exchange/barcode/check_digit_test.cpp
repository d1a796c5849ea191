#include "exchange/barcode/check_digit.hpp"

#include <string>

#include <doctest/doctest.h>

namespace check_digit_test {

using namespace sparewell::exchange;

TEST_CASE("GTIN check digits are those that GS1 publishes") {
  // GS1, "How to calculate a check digit manually": 57, so 60 - 57 = 3.
  CHECK(gs1_check_digit("629104150021") == '3');
  // National GS1 pages.
  CHECK(gs1_check_digit("730001100001") == '7');
  CHECK(gs1_check_digit("890400021003") == '7');
  // GS1 General Specifications, figure 7.8.5.1-1.
  CHECK(gs1_check_digit("9501234567890") == '3');
  // Public GTIN-14 values; the second from the HL7 example of a device identifier.
  CHECK(has_gs1_check_digit("09501101530003"));
  CHECK(has_gs1_check_digit("51022222233336"));
  CHECK(has_gs1_check_digit("00643169001763"));
  CHECK(has_gs1_check_digit("98898765432106"));
  CHECK_FALSE(has_gs1_check_digit("98898765432107"));
  // GS1: a sum that is a multiple of ten has the check digit 0.
  CHECK(gs1_check_digit("0000000") == '0');
}

TEST_CASE("HIBC check characters are those of published labels") {
  const auto check = [](const char* text) { return hibc_check_character(text).value(); };
  // ANSI/HIBC 2.6-2016, figure 1: sum 145, residue 16.
  CHECK(check("+A123BJC5D6E71") == 'G');
  // The same standard, figures 5 and 6; the residue 13 computed.
  CHECK(check("+$$52001510X3G") == 'D');
  // Strings seen in public test data, their residues computed again.
  CHECK(check("+A99912345/$$52001510X3") == '3');
  CHECK(check("+A99912345/$$52001510X3/16D20111212/S77DEFG45") == '7');
  CHECK(check("+A99912345/$$90999910X3/$$+320011577DEFG45/16D20111212") == 'D');
  CHECK(check("+A99912349/$10X3/16D20111231/14D20200131/Q500") == 'Z');
  CHECK(check("+H216040835") == '1');
  CHECK(check("+$$7LT34AA") == 'V');
  CHECK(check("+123456789") == '0');
  // A widely copied example ends in the placeholder C; its sum of 834 gives H (computed).
  CHECK(check("+H123PARTNO1234567890120/$$420020216LOT123456789012345/SXYZ456789012345678/"
              "16D20130202") == 'H');
  CHECK_FALSE(hibc_check_character("+a1"));
}

}  // namespace check_digit_test
