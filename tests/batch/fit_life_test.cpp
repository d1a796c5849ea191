#include <doctest/doctest.h>

#include "batch/run_batch.hpp"

namespace fit_life_test {

TEST_CASE("fit-life reproduces the censored Weibull example of the NIST/SEMATECH e-Handbook") {
  // Source: NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3, data of 8.2.2.1: ten failures,
  // ten units censored at 500 hours; published shape 1.7208, scale 606.5280, log-likelihood -75.135.
  const ScratchFolder folder;
  std::string table = "time,event\n";
  for (const int hours : {54, 187, 216, 240, 244, 335, 361, 373, 375, 386}) {
    table += std::to_string(hours) + ",1\n";
  }
  for (int i = 0; i < 10; ++i) table += "500,0\n";
  write_file(folder / "life.csv", table);
  const auto ran = run_batch({"--json", "fit-life", (folder / "life.csv").string()});
  CAPTURE(ran.errors);
  REQUIRE(ran.status == 0);
  const auto fit = ran.json();
  CHECK(fit["shape"].get<double>() == doctest::Approx(1.7208).epsilon(5e-5));
  CHECK(fit["scale"].get<double>() == doctest::Approx(606.5280).epsilon(1e-5));
  CHECK(fit["log_likelihood"].get<double>() == doctest::Approx(-75.135).epsilon(1e-5));
  CHECK(fit["n"] == 20);
  CHECK(fit["events"] == 10);
  CHECK(fit.contains("coefficients"));
  CHECK(fit.contains("standard_errors"));
}

TEST_CASE("A table that cannot be fitted is refused with one sentence") {
  const ScratchFolder folder;
  const std::string file = (folder / "life.csv").string();
  for (const char* text : {"", "time,event\n", "time,event\n1,0\n2,0\n", "time,event\n0,1\n2,1\n",
                           "time,event,x\n1,1,3\n2,1,3\n4,0,3\n", "time,dead\n1,1\n",
                           "time,event\n1,2\n2,1\n", "time,event\nsoon,1\n2,1\n"}) {
    CAPTURE(text);
    write_file(file, text);
    const auto ran = run_batch({"fit-life", file});
    CHECK(ran.status == 2);
    CHECK(ran.errors.size() > 20);
    CHECK(ran.errors.find('\n') == ran.errors.size() - 1);
  }
}

TEST_CASE("A table whose estimates would run away is refused with what to do, grouped or not") {
  const ScratchFolder folder;
  const std::string file = (folder / "life.csv").string();
  std::string separated = "time,event,sport,who\n";
  std::string at_once = separated;
  for (int i = 0; i < 40; ++i) {
    const auto who = std::to_string(i / 2);
    separated += i % 2 ? std::to_string(20 + i) + ",1,1," + who + "\n" : "500,0,0," + who + "\n";
    at_once += (i % 2 ? "1,1,1," : "900,0,0,") + who + "\n";
  }
  const auto refusal = [&](const std::string& text, std::vector<std::string> options) {
    write_file(file, text);
    options.insert(options.begin(), {"fit-life", file});
    const auto ran = run_batch(options);
    CHECK(ran.status == 2);
    CHECK(ran.errors.find('\n') == ran.errors.size() - 1);
    return ran.errors;
  };
  const std::vector<std::string> grouped{"--group", "who"};
  CHECK(refusal(separated, grouped).find("sport") != std::string::npos);
  CHECK(refusal(at_once, grouped).find("leave out") != std::string::npos);
  CHECK(refusal("time,event,sport\n5,1,1\n7,1,1\n9,0,0\n50,0,0\n", {}).find("sport") !=
        std::string::npos);
  CHECK(refusal("time,event\n5,1\n5,1\n3,0\n", {}).find("add rows") != std::string::npos);
}

TEST_CASE("A covariate of words becomes one coefficient for each word but the first") {
  const ScratchFolder folder;
  write_file(folder / "life.csv",
             "time,event,place\n5,1,north\n7,1,north\n9,0,north\n3,1,south\n4,1,south\n6,1,south\n");
  const auto fit = run_batch({"--json", "fit-life", (folder / "life.csv").string()}).json();
  CHECK(fit["coefficients"].contains("placesouth"));
  CHECK(fit["coefficients"]["placesouth"].get<double>() < 0);
}

TEST_CASE("Rows of one group share a multiplier, and its variance is told") {
  const ScratchFolder folder;
  const std::string file = (folder / "life.csv").string();
  write_file(file,
             "time,event,who\n10,1,a\n12,1,a\n9,1,a\n14,1,a\n60,1,b\n75,1,b\n50,0,b\n81,1,b\n"
             "30,1,c\n22,1,c\n41,0,c\n");
  const auto shared = run_batch({"--json", "fit-life", file, "--group", "who"}).json();
  CHECK(shared["theta"].get<double>() > 0.1);
  CHECK(shared["groups"] == 3);
  CHECK(shared["standard_errors"]["Log(theta)"].get<double>() > 0);
  CHECK(shared["coefficients"].size() == 1);

  write_file(file, "time,event,who\n10,1,a\n20,1,a\n35,1,a\n10,1,b\n20,1,b\n35,1,b\n");
  const auto boundary = run_batch({"--json", "fit-life", "--group", "who", file});
  CHECK(boundary.status == 0);
  CHECK(boundary.json()["theta"] == 0.0);
  CHECK_FALSE(boundary.json()["standard_errors"].contains("Log(theta)"));
  CHECK(run_batch({"fit-life", "--group", "who", file}).out.find("estimated as 0") !=
        std::string::npos);

  for (const char* wrong : {"whom", "time", "event"}) {
    const auto refused = run_batch({"fit-life", "--group", wrong, file});
    CHECK(refused.status == 2);
    CHECK(refused.errors.find(wrong) != std::string::npos);
  }
}

}  // namespace fit_life_test
