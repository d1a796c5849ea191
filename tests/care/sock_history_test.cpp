#include "care/sock_history.hpp"

#include "care/clinic_made.hpp"

namespace sock_history_test {

using namespace sparewell;
using namespace sparewell::care;
using namespace sparewell::care::testing;

namespace {

Item sock(const std::string& code, const std::string& description) {
  auto item = made_item(code, Kind::sock);
  item.description = description;
  return item;
}

std::optional<SockSign> sign_of(const std::vector<std::pair<std::string, int>>& given) {
  Clinic clinic;
  clinic.items = {sock("S1", "Sock, 1 ply"), sock("S3", "Sock, 3 ply"), sock("S5", "Sock, 5 ply"),
                  sock("S?", "Sock, thick")};
  for (const auto& [item, days_ago] : given) clinic.units.push_back(made_unit(item, days_ago));
  std::vector<const Unit*> units;
  for (const Unit& unit : clinic.units) units.push_back(&unit);
  return sock_sign(units, ClinicIndex{clinic}, today);
}

}  // namespace

TEST_CASE("The ply stands before the word, and is not guessed") {
  CHECK(ply_of(sock("A", "Sock, 3 ply, below knee, size S")) == 3);
  CHECK(ply_of(sock("A", "5-ply sock")) == 5);
  CHECK(ply_of(sock("A", "Sock 1PLY")) == 1);
  CHECK_FALSE(ply_of(sock("A", "Sock, ply 3")));
  CHECK_FALSE(ply_of(sock("A", "Sock, 2 plywood")));
  CHECK_FALSE(ply_of(sock("A", "Sock, 1.5 ply")));
  CHECK_FALSE(ply_of(sock("A", "Sock, 300 ply")));
  CHECK_FALSE(ply_of(sock("A", "Socks, 1 ply and 3 ply")));
  CHECK_FALSE(ply_of(sock("A", "")));
  auto liner = sock("A", "Liner, 3 ply");
  liner.kind = Kind::liner;
  CHECK_FALSE(ply_of(liner));
}

TEST_CASE("Thicker socks lately are a sign; plies are averaged, never added up") {
  const auto sign = sign_of({{"S1", 400}, {"S1", 300}, {"S3", 50}, {"S5", 10}, {"S?", 5}});
  REQUIRE(sign);
  CHECK(sign->plies_before == 1);
  CHECK(sign->plies_lately == 4);
  CHECK(sign->socks_lately == 2);
  // More socks of the same ply are no thicker socks.
  CHECK_FALSE(sign_of({{"S3", 400}, {"S3", 300}, {"S3", 50}, {"S3", 50}, {"S3", 50}, {"S3", 50}}));
  CHECK_FALSE(sign_of({{"S5", 400}, {"S5", 300}, {"S1", 50}, {"S1", 50}}));
}

TEST_CASE("Too few socks are no sign") {
  CHECK_FALSE(sign_of({}));
  CHECK_FALSE(sign_of({{"S1", 400}, {"S5", 50}}));
  CHECK_FALSE(sign_of({{"S5", 50}, {"S5", 20}}));
  CHECK_FALSE(sign_of({{"S?", 400}, {"S?", 300}, {"S5", 50}, {"S5", 10}}));
}

}  // namespace sock_history_test
