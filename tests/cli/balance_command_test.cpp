// A balancing from its document: numbers of the grinding wheel of S. S. Rao, Mechanical Vibrations (inputs
// from memory), and both schemas.
#include "core/workshop/balance_job.h"
#include "tests/cli/site_fixture.h"
#include "tests/exchange/schema_check.h"

namespace fettle::cli_test {
namespace {

Json schemaOf(const std::string& name) {
    const auto text =
        RealFileSystem().read(std::string(FETTLE_SOURCE_DIR) + "/resources/schemas/" + name + ".schema.json");
    EXPECT_TRUE(text);
    return Json::parse(text.value_or("{}"));
}

TEST(BalanceCommand, ComputesADocumentAndFitsItsSchemas) {
    BalanceJob job;
    job.name = "wheel";
    fitToMethod(job);
    job.planes[0].radiusMm = 150;
    job.planes[0].places.count = 8;
    job.initial.sensors = {{{10, 40.0}}};
    job.trials[0].trial = Polar{4, 65};
    job.trials[0].sensors = {{{6, 110.0}}};
    ScratchFolder folder;
    const std::string path = folder / "wheel.json", text = balanceJson(job);
    ASSERT_TRUE(RealFileSystem().writeSafely(path, text));
    const Json jobSchema = schemaOf("balance_job"), answerSchema = schemaOf("balance");
    EXPECT_THAT(made::SchemaCheck(jobSchema).faultsOf(Json::parse(text)), testing::IsEmpty());
    const Ran ran = run({"balance", path, "--json"});
    ASSERT_EQ(ran.status, 0) << ran.err;
    const Json answer = Json::parse(ran.out);
    EXPECT_THAT(made::SchemaCheck(answerSchema).faultsOf(answer), testing::IsEmpty());
    EXPECT_NEAR(answer["planes"][0]["fit"]["mass_g"].get<double>(), 4.104829907, 1e-6);
    EXPECT_EQ(answer["planes"][0]["split"].size(), 2u);
    EXPECT_EQ(run({"balance", folder / "none.json"}).status, 3);
    ASSERT_TRUE(RealFileSystem().writeSafely(path, "{\"schema\": 1}"));
    EXPECT_EQ(run({"balance", path}).status, 3);
}

}  // namespace
}  // namespace fettle::cli_test
