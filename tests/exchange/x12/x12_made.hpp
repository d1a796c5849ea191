// Writes X12 files for tests: envelopes with right counts around given segments.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace sparewell::exchange::testing {

struct MadeTransaction {
  std::string kind;  ///< "837" or "835"
  std::vector<std::string> segments;
};

struct MadeFile {
  std::string text;
  int segments = 0;

  void add(std::string_view segment) {
    text += segment;
    text += "~\n";
    ++segments;
  }
};

/// One interchange with a functional group for each transaction.
inline MadeFile x12_made(const std::vector<MadeTransaction>& transactions) {
  MadeFile made;
  made.add(
      "ISA*00*          *00*          *ZZ*INVENTED CLINIC*ZZ*INVENTED PAYER *261125*0930*^*00501*"
      "000000001*0*T*:");
  int control = 0;
  for (const auto& transaction : transactions) {
    ++control;
    const bool claim = transaction.kind == "837";
    const auto* implementation = claim ? "005010X222A1" : "005010X221A1";
    made.add(fmt::format("GS*{}*CLINIC*PAYER*20261125*0930*{}*X*{}", claim ? "HC" : "HP", control,
                         implementation));
    made.add(fmt::format("ST*{}*{:04}*{}", transaction.kind, control, implementation));
    for (const auto& segment : transaction.segments) made.add(segment);
    made.add(fmt::format("SE*{}*{:04}", transaction.segments.size() + 2, control));
    made.add(fmt::format("GE*1*{}", control));
  }
  made.add(fmt::format("IEA*{}*000000001", transactions.size()));
  return made;
}

/// A professional claim file with two claims, the second of a patient who is not the subscriber.
inline MadeTransaction small_claims() {
  return {"837",
          {"BHT*0019*00*1*20261125*0930*CH",
           "NM1*41*2*INVENTED CLINIC*****46*1",
           "PER*IC*OFFICE*TE*5550100",
           "NM1*40*2*INVENTED PAYER*****46*2",
           "HL*1**20*1",
           "NM1*85*2*INVENTED CLINIC*****XX*1234567893",
           "N3*1 INVENTED STREET",
           "N4*NOWHERE*XX*00000",
           "REF*EI*000000000",
           "HL*2*1*22*0",
           "SBR*P*18*******CI",
           "NM1*IL*1*Samplename*Ada****MI*M-1001",
           "DMG*D8*19610214*F",
           "NM1*PR*2*Northfield Health*****PI*77",
           "CLM*CL-1*1475.74***11:B:1*Y*A*Y*Y",
           "HI*ABK:Z89511",
           "LX*1",
           "SV1*HC:L5673:RT*1219.5*UN*2***1",
           "DTP*472*D8*20261103",
           "REF*6R*CL-1/1",
           "LX*2",
           "SV1*HC:L8420:RT:RA*256.24*UN*6***1",
           "DTP*472*RD8*20261103-20261130",
           "REF*6R*CL-1/2",
           "HL*3*1*22*1",
           "SBR*P********CI",
           "NM1*IL*1*Samplename*Bert****MI*M-1002",
           "DMG*D8*19700301*M",
           "NM1*PR*2*Northfield Health*****PI*77",
           "HL*4*3*23*0",
           "PAT*19",
           "NM1*QC*1*Samplename*Cora",
           "DMG*D8*20010405*F",
           "CLM*CL-2*-0***11:B:8*Y*A*Y*Y",
           "REF*F8*PAYER-77",
           "SBR*S*18*******CI",
           "NM1*IL*1*Otherwise*Dora****MI*X-9",
           "NM1*PR*2*Second Payer*****PI*78",
           "REF*F8*OTHER-78",
           "LX*1",
           "SV1*HC:L5685:LT*.5*UN*1***1",
           "DTP*472*D8*20260910"}};
}

/// A payment around the public sample lines (layout of CLP, SVC, DTM, CAS and REF*6R as published;
/// payer, persons, totals and what stands around them are ours).
inline MadeTransaction sample_payment() {
  return {"835",
          {"BPR*I*56.52*C*ACH*CCP*01*1*DA*1*1**01*1*DA*1*20110301", "TRN*1*PAY-1*1",
           "DTM*405*20110228", "N1*PR*Northfield Health", "N1*PE*Invented Clinic*XX*1234567893",
           "LX*1", "CLP*444444*1*56.70*56.52*0*MC*PC-1", "NM1*QC*1*Samplename*Ada****MI*M-1001",
           "SVC*HC:H0005:HF:H9*56.70*56.52**6", "DTM*472*20110205", "CAS*CO*42*0.18*0",
           "REF*6R*444444", "CLP*999999*4*25.95*0*25.95*MC*PC-2",
           "NM1*QC*1*Samplename*Ada****MI*M-1001", "SVC*HC:H0004:HF:H9*25.95*0**1",
           "DTM*472*20110209", "CAS*CR*18*25.95*0", "CAS*CO*42*0*0", "REF*6R*999999"}};
}

}  // namespace sparewell::exchange::testing
